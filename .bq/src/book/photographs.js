// What a photograph may be said to show: stored codes and their words.
export const PHOTO_SHOWS = {
  pan: 'on the pan, with the reading',
  whole: 'the whole',
  marks: 'marks',
  damage: 'damage or wear',
  stones: 'stones',
  work: 'work being done',
  packing: 'packing',
  paper: 'a signed paper',
};
