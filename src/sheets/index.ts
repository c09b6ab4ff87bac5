// The list of sheets, by name.
import { handBack } from './hand-back.ts';
import { takeIn } from './take-in.ts';

export const SHEETS = { 'take-in': takeIn, 'hand-back': handBack } as const;
