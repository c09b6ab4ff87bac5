// An entry's fields in words: label by label, as a person reads them.
import type { Detail } from '../../../views/entry.tsx';
import type { Control } from '../../book/values.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { entryType } from '../../ledger/registry.ts';
import { type CivilDate, formatCivilDate, formatInstant, type Instant } from '../../units/dates.ts';
import { formatMoney, type Money } from '../../units/money.ts';
import { type Reading, readingWords } from '../../weighing/reading.ts';
import type { Policy, Web } from '../session/context.ts';
import { namer } from './words.ts';

/** Every field the entry has, in the order of its form; `now` is what it says after corrections. */
export async function describe(web: Web, policy: Policy, kept: Kept, now: Readonly<Record<string, unknown>>): Promise<readonly Detail[]> {
  const { fields, form } = entryType(kept.leaf.type);
  const name = await namer(web, textsIn(now));
  return Object.entries(fields).flatMap(([field, { control, correctable, sealed }]) => {
    const isSealed = kept.leaf.sealed?.[field] !== undefined;
    if (now[field] === undefined && !isSealed) return [];
    const words = now[field] === undefined ? 'sealed, and no longer to be opened' : controlWords(control, now[field], name, policy.zone);
    return [{ name: field, label: form.labels[field] ?? field, words, correctable, sealed: sealed !== null && isSealed }];
  });
}

/** Every text in a value, however deep: the balance of a weight and a thing in a row are named like any other. */
const textsIn = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];

function controlWords(control: Control, value: unknown, name: (id: string) => string, zone: string): string {
  switch (control.kind) {
    case 'weight':
      return weightWords(value as Reading, name);
    case 'choice':
      return control.options[String(value)] ?? String(value);
    case 'choices':
      return (value as readonly string[]).map((code) => control.options[code] ?? code).join(', ');
    case 'ref':
    case 'fresh':
      return name(String(value));
    case 'money':
      return formatMoney(value as Money);
    case 'day':
      return formatCivilDate(value as CivilDate);
    case 'instant':
      return formatInstant(value as Instant, zone);
    case 'tick':
      return 'yes';
    case 'decimal':
      return `${value}\u00a0${control.unit}`;
    case 'list':
      return (value as readonly unknown[]).map((one) => controlWords(control.of, one, name, zone)).join('; ');
    case 'group':
      return Object.entries(control.members)
        .flatMap(([member, of]) => {
          const said = (value as Readonly<Record<string, unknown>>)[member];
          return said === undefined || of.control.kind === 'fresh' ? [] : [controlWords(of.control, said, name, zone)];
        })
        .join(', ');
    default:
      return typeof value === 'object' ? JSON.stringify(value) : String(value);
  }
}

function weightWords(reading: Reading, name: (id: string) => string): string {
  const parts = [
    readingWords(reading),
    reading.balance && `on ${name(reading.balance)}`,
    reading.onPan && `with ${reading.onPan.map(({ thing }) => thing).join(', ')} on the pan`,
    reading.dry === 'yes' && 'dry',
    reading.repeats && `read again: ${reading.repeats.join(', ')}`,
    reading.because,
  ];
  return parts.filter(Boolean).join('; ');
}
