// The form by which one field of an entry is corrected: as the entry's own form asks for it, with what it says now filled in.
import { writeControl } from '../../book/codec.ts';
import { optional, stated } from '../../book/entry.ts';
import { lines } from '../../book/values.ts';
import { authNeeded } from '../../ledger/authority.ts';
import type { Kept, Line } from '../../ledger/leaf.ts';
import { entryType } from '../../ledger/registry.ts';
import { rememberedFields, saysNow } from '../../ledger/remember.ts';
import { entryAt, withCorrections } from '../../queries/entries.ts';
import { streamSize } from '../../queries/sizes.ts';
import { jobNamed } from '../../queries/things.ts';
import { shelfOn } from '../../store/shelf.ts';
import type { FormOf } from '../form/form-page.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, policyFor, type Web, whoAsks } from '../session/context.ts';

/** The job whose stream an entry is in first; null where it is in none. */
export async function jobOf(web: Web, stream: string): Promise<{ id: string; bag: string } | null> {
  const job = await jobNamed(web.store, stream);
  return job && { id: stream, bag: job.says.bag ?? '' };
}

/** The form of the entry and field that the address names, and what stands there now; null where there is none, or it is never corrected. */
export async function correctionOf(web: Web, c: Ctx): Promise<(FormOf & { readonly prefilled: [string, string[]][] }) | null> {
  const kept = await entryAt(web.store, wholeNumber(c.req.param('seq')));
  const name = c.req.param('field') ?? '';
  if (!kept) return null;
  const { fields, form } = entryType(kept.leaf.type);
  const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (!field?.correctable) return null;
  const all = await withCorrections(web.store, [kept]);
  const was = (await saysNow({ leaves: async () => all }, kept))[name];
  const { s: stream } = kept.leaf.links[0];
  const job = await jobOf(web, stream);
  return {
    fields: { [name]: optional(field as never), reason: stated(lines(500)) },
    form: {
      title: `Correct entry ${kept.seq}`,
      labels: { [name]: form.labels[name] ?? name, reason: 'Why' },
      hints: { reason: 'The customer may read this: no names.' },
      button: 'Write the correction',
    },
    asks: authNeeded(
      entryType('corrected'),
      { by: whoAsks(c).id },
      { target: await rememberedFields(shelfOn(web.store.read, web.store.keys), kept) },
    ),
    action: c.req.path,
    extra: [[`seen.${stream}`, String(await streamSize(web.store, stream))]],
    next: () => (job ? `/jobs/${job.id}` : `/entries/${kept.seq}`),
    lines: ({ [name]: is, reason }) => [correction(kept, name, was, is, reason)],
    prefilled: grouped(writeControl(field.control, was, name, policyFor(c).zone)),
  };
}

function correction(target: Kept, field: string, was: unknown, is: unknown, reason: unknown): Line {
  const said = { ...(was === undefined ? {} : { was }), ...(is === undefined ? {} : { is }) };
  return { type: 'corrected', data: { target: target.hash, seq: target.seq, field, ...said, reason } };
}

function grouped(pairs: readonly (readonly [string, string])[]): [string, string[]][] {
  const all = new Map<string, string[]>();
  for (const [name, value] of pairs) all.set(name, [...(all.get(name) ?? []), value]);
  return [...all];
}
