// The list of sheets, by name.
import { finish } from './finish.ts';
import { handBack, handBackWithException } from './hand-back.ts';
import { takeIn } from './take-in.ts';
import { ticket } from './ticket.ts';
import { wait } from './wait.ts';

export const SHEETS = {
  ticket,
  wait,
  'take-in': takeIn,
  finish,
  'hand-back': handBack,
  'hand-back-with-exception': handBackWithException,
} as const;
