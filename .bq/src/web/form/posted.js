/** A body that is not taken: too much (413), of another kind (415), or broken (400); the sentence says what to do. */
export class NotTaken extends Error {
  status;
  constructor(status, say) {
    super(say);
    this.status = status;
  }
}
const KB = 1024;
/** Before sign-in a form is a name and a PIN, or a first run; after it the longest sheet with all its rows; a photograph only where its form asks for one. */
const MOST = {
  unknown: { bytes: 16 * KB, fields: 50 },
  staff: { bytes: 512 * KB, fields: 2000 },
  photographs: { bytes: 24 * KB * KB, fields: 2000 },
};
/** Reads the body: a form, or a flat JSON object of the same names. Throws NotTaken. */
export async function readPosted(c, holds = 'text') {
  const most = MOST[!c.get('session') ? 'unknown' : holds === 'text' ? 'staff' : holds];
  const bytes = await bytesOf(c, most.bytes);
  const type = c.req.header('content-type') ?? '';
  const pairs = bytes.length === 0 ? [] : await pairsOf(type, bytes, most);
  if (pairs.length > most.fields) throw tooMany(most);
  const posted = new Map();
  const files = new Map();
  for (const [name, value] of pairs) {
    if (typeof value !== 'string') {
      if (value.size > 0) files.set(name, value);
      continue;
    }
    if (/[\0\p{Surrogate}]/u.test(name + value))
      throw new NotTaken(400, 'Something typed holds a character that cannot be written. Take it out, then send it again.');
    const values = posted.get(name);
    if (values) values.push(value);
    else posted.set(name, [value]);
  }
  return { posted, files };
}
async function bytesOf(c, most) {
  if (Number(c.req.header('content-length') ?? 0) > most) throw tooLarge(most);
  const chunks = [];
  let size = 0;
  const reader = c.req.raw.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read().catch(() => {
      throw new NotTaken(400, 'This form did not arrive whole. Send it again.');
    });
    if (done) break;
    size += value.length;
    if (size > most) throw tooLarge(most);
    chunks.push(value);
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
async function pairsOf(type, bytes, most) {
  const [kind] = type.toLowerCase().split(';', 1);
  switch (kind?.trim()) {
    case 'application/x-www-form-urlencoded':
      if (timesIn(bytes, '&', most.fields) > most.fields) throw tooMany(most);
      return [...new URLSearchParams(new TextDecoder().decode(bytes))];
    case 'multipart/form-data': {
      const [, quoted, plain] = /boundary=(?:"([^"]+)"|([^\s;]+))/i.exec(type) ?? [];
      if (timesIn(bytes, `--${quoted ?? plain ?? ''}`, most.fields + 1) > most.fields + 1) throw tooMany(most);
      const form = await new Response(bytes, { headers: { 'content-type': type } }).formData().catch(() => {
        throw new NotTaken(400, 'This form arrived broken. Open it again, and send it again.');
      });
      return [...form.entries()];
    }
    case 'application/json':
      return jsonPairs(bytes);
    default:
      throw new NotTaken(415, 'Only forms are taken, or JSON of the same names. Send it as one of these.');
  }
}
/** How often the words stand in the bytes, counted to one more than matters. */
function timesIn(bytes, words, most) {
  const text = Buffer.from(bytes.buffer);
  let times = 0;
  for (let at = text.indexOf(words); at !== -1 && times <= most; at = text.indexOf(words, at + 1)) times++;
  return times;
}
function jsonPairs(bytes) {
  const flat = new NotTaken(400, 'Send a JSON object whose values are texts, or lists of texts.');
  let body;
  try {
    body = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw flat;
  }
  if (typeof body !== 'object' || body === null || Array.isArray(body)) throw flat;
  return Object.entries(body).flatMap(([name, value]) =>
    (Array.isArray(value) ? value : [value]).map((one) => {
      if (typeof one !== 'string') throw flat;
      return [name, one];
    }),
  );
}
const tooLarge = (most) =>
  new NotTaken(
    413,
    `This is more than is taken here: ${most >= KB * KB ? `${most / KB / KB} MB` : `${most / KB} kB`} at most. Go back; what you typed is still there.`,
  );
const tooMany = ({ fields }) => new NotTaken(413, `This has more than ${fields} fields, which no form here has. Open the form again.`);
export const first = (posted, name) => posted.get(name)?.[0] ?? '';
/** What the address carries after its question mark, as if it had been posted; a form's own key and its PIN or password are never taken from there. */
export function queried(c) {
  const named = Object.entries(c.req.queries()).filter(
    ([name]) => name !== 'formKey' && name !== 'pin' && name !== 'password' && name !== 'draft' && !name.startsWith('seen.'),
  );
  return new Map(named);
}
