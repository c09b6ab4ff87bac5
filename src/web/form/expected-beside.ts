// What stands beside a weight: what the ledger expects of the very thing that is weighed, in the unit it was last weighed in.
import type { FormState } from '../../../views/parts/field.tsx';
import type { Form } from '../../book/entry.ts';
import { expectedOf, lastReading, type Plates } from '../../ledger/expected.ts';
import type { Thing } from '../../ledger/thing.ts';
import { thingAt } from '../../queries/things.ts';
import { decimalsOfStep, formatMass } from '../../units/mass.ts';
import type { Web } from '../session/context.ts';
import type { Hidden } from './form.ts';
import type { Fieldset } from './write.ts';

/** What is expected on the pan of the things that a form weighs whole, where each is one thing; beside no other weight. */
export async function expectedBeside(
  web: Web,
  { form: { weighs = {} }, extra = [] }: { readonly form: Form<Fieldset>; readonly extra?: Hidden },
  { things, typed }: Pick<FormState, 'things' | 'typed'>,
  parameters: Plates,
): Promise<Readonly<Record<string, string>>> {
  const beside: Record<string, string> = {};
  for (const [field, of] of Object.entries(weighs)) {
    const choices = things[of ?? ''] ?? [];
    const only = extra.find(([name]) => name === of)?.[1] ?? (choices.length === 1 ? choices[0]?.[0] : typed.get(of ?? '')?.[0]);
    const thing = only ? await thingAt(web.store, only) : null;
    const words = thing && expectedWords(thing, parameters);
    if (words !== null) beside[field] = words;
  }
  return beside;
}

/** "7.11 ± 0.02 g" where the ledger knows what to expect of a thing, in the unit it was last weighed in. */
export function expectedWords(thing: Thing, balances: Plates): string | null {
  const expected = expectedOf(thing, balances);
  if (!expected) return null;
  const unit = lastReading(thing)?.unit ?? 'g';
  const decimals = decimalsOfStep(expected.stepNg, unit);
  return `${formatMass(expected.ng, unit, decimals)} ± ${formatMass(expected.marginNg, unit, decimals)}\u00a0${unit}`;
}
