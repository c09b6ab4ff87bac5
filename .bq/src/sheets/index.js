// The list of sheets, by name.
import { finish } from './finish.js';
import { handBack, handBackWithException } from './hand-back.js';
import { takeIn } from './take-in.js';
import { ticket } from './ticket.js';
import { wait } from './wait.js';
export const SHEETS = {
  ticket,
  wait,
  'take-in': takeIn,
  finish,
  'hand-back': handBack,
  'hand-back-with-exception': handBackWithException,
};
