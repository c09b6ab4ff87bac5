import { entryType } from '../../ledger/registry.js';
import { formatCivilDate, formatInstant } from '../../units/dates.js';
import { formatMoney } from '../../units/money.js';
import { readingWords } from '../../weighing/reading.js';
import { namer } from './words.js';
/** Every field the entry has, in the order of its form; `now` is what it says after corrections. */
export async function describe(web, policy, kept, now) {
  const { fields, form } = entryType(kept.leaf.type);
  const name = await namer(
    web,
    Object.values(now).filter((value) => typeof value === 'string'),
  );
  return Object.entries(fields).flatMap(([field, { control, correctable, sealed }]) => {
    const isSealed = kept.leaf.sealed?.[field] !== undefined;
    if (now[field] === undefined && !isSealed) return [];
    const words = now[field] === undefined ? 'sealed, and no longer to be opened' : controlWords(control, now[field], name, policy.zone);
    return [{ name: field, label: form.labels[field] ?? field, words, correctable, sealed: sealed !== null && isSealed }];
  });
}
function controlWords(control, value, name, zone) {
  switch (control.kind) {
    case 'weight':
      return weightWords(value, name);
    case 'choice':
      return control.options[String(value)] ?? String(value);
    case 'choices':
      return value.map((code) => control.options[code] ?? code).join(', ');
    case 'ref':
    case 'fresh':
      return name(String(value));
    case 'money':
      return formatMoney(value);
    case 'day':
      return formatCivilDate(value);
    case 'instant':
      return formatInstant(value, zone);
    case 'tick':
      return 'yes';
    case 'decimal':
      return `${value}\u00a0${control.unit}`;
    case 'list':
      return value.map((one) => controlWords(control.of, one, name, zone)).join('; ');
    case 'group':
      return Object.entries(control.members)
        .flatMap(([member, of]) => {
          const said = value[member];
          return said === undefined || of.control.kind === 'fresh' ? [] : [controlWords(of.control, said, name, zone)];
        })
        .join(', ');
    default:
      return typeof value === 'object' ? JSON.stringify(value) : String(value);
  }
}
function weightWords(reading, name) {
  const parts = [
    readingWords(reading),
    reading.balance && `on ${name(reading.balance)}`,
    reading.onPan && `with ${reading.onPan.map(({ thing }) => thing).join(', ')} on the pan`,
    reading.dry && { yes: 'dry', no: 'not dry', unsure: 'dry or not: unsure' }[reading.dry],
    reading.repeats && `read again: ${reading.repeats.join(', ')}`,
    reading.because,
  ];
  return parts.filter(Boolean).join('; ');
}
