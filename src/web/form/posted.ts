// What a form or a JSON body posted, as names with their values, whichever of the two it was; files apart.
import type { Posted } from '../../book/codec.ts';
import type { Ctx } from '../session/context.ts';

export interface Received {
  readonly posted: Posted;
  readonly files: ReadonlyMap<string, File>;
}

/** Reads the body: a form, or a flat JSON object of the same names. */
export async function readPosted(c: Ctx): Promise<Received> {
  const posted = new Map<string, string[]>();
  const files = new Map<string, File>();
  const add = (name: string, value: string) => posted.set(name, [...(posted.get(name) ?? []), value]);
  if (/^application\/json\b/.test(c.req.header('content-type') ?? '')) {
    const body: unknown = await c.req.json().catch(() => ({}));
    for (const [name, value] of Object.entries(body ?? {})) {
      for (const one of Array.isArray(value) ? value : [value]) add(name, String(one));
    }
    return { posted, files };
  }
  for (const [name, value] of (await c.req.formData()).entries()) {
    if (typeof value === 'string') add(name, value);
    else if (value.size > 0) files.set(name, value);
  }
  return { posted, files };
}

export const first = (posted: Posted, name: string): string => posted.get(name)?.[0] ?? '';

/** What the address carries after its question mark, as if it had been posted; a form's own key and its PIN are never taken from there. */
export function queried(c: Ctx): Posted {
  const named = Object.entries(c.req.queries()).filter(
    ([name]) => name !== 'formKey' && name !== 'pin' && name !== 'draft' && !name.startsWith('seen.'),
  );
  return new Map(named);
}
