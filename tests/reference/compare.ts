// How a check row is judged: the expected value, what came back, and the row's own tolerance.

/** Glue for check rows: unpacks a row's input and calls the function of the program it checks. */
export type Fns = Readonly<Record<string, (input: never) => unknown>>;
/** Glue for vectors: calls the function of the program and states the outcome with `expect`; a group that states nothing fails. */
export type LogGroups = Readonly<Record<string, (vector: never) => void | Promise<void>>>;

export interface Tolerance {
  readonly type: 'exact' | 'abs' | 'rel' | 'inside' | 'abs1';
  readonly value?: unknown;
}

const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** The difference at the first place where `got` leaves the tolerance, as "path: why", or null. Keys that only `got` has are not judged, nor are `words`: they are for the screen. A function in `got` judges its expected value itself, where a row states more than one value (a printed column, a list of what must be found). */
export function difference(expected: unknown, got: unknown, tolerance: Tolerance, path = 'value'): string | null {
  if (typeof got === 'function') return got(expected) === true ? null : `${path}: ${show(expected)} is not so`;
  if (tolerance.type === 'inside') return insideDifference(expected, got, path);
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return `${path}: needs a list of ${expected.length}`;
    return firstOf(expected.map((item, i) => difference(item, got[i], narrowed(tolerance, i), `${path}[${i}]`)));
  }
  if (isObject(expected)) {
    if (!isObject(got)) return `${path}: needs an object`;
    const keys = Object.keys(expected).filter((key) => key !== 'words');
    return firstOf(keys.map((key) => difference(expected[key], got[key], narrowed(tolerance, key), `${path}.${key}`)));
  }
  return sameValue(expected, got, tolerance) ? null : `${path}: ${show(got)} is not ${show(expected)}`;
}

/** Numbers and decimal strings are compared as numbers; everything else must be identical. */
function sameValue(expected: unknown, got: unknown, tolerance: Tolerance): boolean {
  const [a, b] = [numberOf(got), numberOf(expected)];
  if (a === null || b === null) return Object.is(expected, got);
  if (a === b || sameDecimal(a, b)) return true;
  const allowed = numberOf(tolerance.value) ?? 0;
  const scale = { exact: 0, inside: 0, abs: 1, rel: Math.abs(b), abs1: Math.max(1, Math.abs(b)) }[tolerance.type];
  return Math.abs(a - b) <= allowed * scale;
}

/** 15 significant digits survive every trip between decimal and binary (IEEE 754 binary64), so exact means equal in those. */
function sameDecimal(a: number, b: number): boolean {
  return a.toPrecision(15) === b.toPrecision(15);
}

function insideDifference(expected: unknown, got: unknown, path: string): string | null {
  const [low, high] = Array.isArray(expected) ? expected.map(numberOf) : [];
  const value = numberOf(got);
  if (low == null || high == null || value === null) return `${path}: needs a number and a range`;
  return value >= low && value <= high ? null : `${path}: ${value} is outside ${low} to ${high}`;
}

/** A tolerance value may be an object keyed as the expected value, or by the initial of a key's last word (d for insideDiameter); a key it does not name must be exact. */
function narrowed(tolerance: Tolerance, key: string | number): Tolerance {
  if (!isObject(tolerance.value)) return tolerance;
  const initial = /([A-Z])[a-z]*$/.exec(String(key))?.[1]?.toLowerCase();
  return { type: tolerance.type, value: tolerance.value[key] ?? (initial ? tolerance.value[initial] : undefined) };
}

function numberOf(value: unknown): number | null {
  if (typeof value === 'number') return value;
  return typeof value === 'string' && DECIMAL.test(value) ? Number(value) : null;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function firstOf(found: readonly (string | null)[]): string | null {
  return found.find((text) => text !== null) ?? null;
}

export function show(value: unknown): string {
  return JSON.stringify(value) ?? String(value);
}
