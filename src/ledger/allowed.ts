// Whether an entry that is written was its writer's to write: asked again by the check, of the things as they stood before it.
import type { StaffRole } from '../book/facts.ts';
import { mayOf, notAllowed } from './authority.ts';
import type { Leaf } from './leaf.ts';
import type { Shelf } from './overlay.ts';
import { type AnyEntry, entryType, type Views } from './registry.ts';
import { rememberedFields } from './remember.ts';
import type { Thing } from './thing.ts';

/** The first entry makes its writer the owner. */
export const beginsShop = ({ fields, subject }: AnyEntry): boolean =>
  fields[subject]?.role === 'begins' && fields[subject].kinds.includes('shop');

/** Whether somebody of that role works here. */
export const isStaff = (role: Thing['role']): role is StaffRole => role !== undefined && role !== 'left';

/** Whether a screen was enrolled and then withdrawn; of one that never was, such as the one PC, no entry tells. */
export const isWithdrawn = (shop: Thing | undefined, device: string): boolean => shop?.says[`device:${device}`] === '';

/** Why it was not, in words that end a sentence; null where it was. */
export async function whyNotAllowed(before: Shelf, leaf: Leaf, shop: string): Promise<string | null> {
  const entry = entryType(leaf.type, leaf.ver);
  if (beginsShop(entry)) return null;
  const role = (await before.thing(leaf.by))?.role;
  if (!isStaff(role)) return 'by nobody who worked here then';
  if (leaf.witness !== undefined && !isStaff((await before.thing(leaf.witness))?.role))
    return 'before a witness who did not work here then';
  if (isWithdrawn(await before.thing(shop), leaf.device)) return 'at a screen that had been withdrawn';
  const view = await viewFor(before, leaf);
  if (!view) return 'of an entry that is not in this ledger';
  const barred = notAllowed(mayOf(entry, view, leaf.data, leaf), role, leaf.auth);
  if (!barred) return null;
  return barred.code === 'not_yours_to_write'
    ? 'by somebody whose role may not write it'
    : `without the ${barred.field === 'pin' ? 'PIN' : 'password'} that it asks for`;
}

/** What a correction corrects, for who may correct it depends on that; null where that is not there. */
async function viewFor(before: Shelf, { type, data }: Leaf): Promise<Views | null> {
  if (type !== 'corrected') return {};
  const target = await before.entry(String(data.target));
  return target ? { target: await rememberedFields(before, target) } : null;
}
