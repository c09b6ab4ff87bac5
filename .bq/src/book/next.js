export const DOES_NEXT = 10;
const isOver = ({ status }) => status === 'closed' || status === 'withdrawn';
/** While there is a job, after all that is nearer. */
export const whileOpen = (rank) => (job) => (isOver(job) ? null : 60 + rank);
/** Also of a job that is over. */
export const always = (rank) => () => 60 + rank;
/** Work at the bench, once it was agreed, in its usual order. */
export const atBench =
  (rank) =>
  ({ status }) =>
    status === 'agreed' ? 20 + rank : null;
