// Which of the usual cautions an entry's form shows, by the country the shop is in.
import { CAUTIONS, type CautionId } from '../trade/caution-table.ts';

const SHOWN: Readonly<Record<string, readonly string[]>> = {
  GB: ['anywhere', 'UK', 'EU/UK', 'UK/EU'],
  US: ['anywhere', 'US', 'US, varies'],
};

/** The text of a caution with its source, or null where it does not concern this country; elsewhere only what holds anywhere. */
export function cautionWords(id: string, country: string): string | null {
  const caution = Object.hasOwn(CAUTIONS, id) ? CAUTIONS[id as CautionId] : undefined;
  if (!caution) throw new Error(`no caution ${id}`);
  return (SHOWN[country] ?? ['anywhere']).includes(caution.jurisdiction) ? `${caution.text} (${caution.source})` : null;
}
