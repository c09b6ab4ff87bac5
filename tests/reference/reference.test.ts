// Every published figure we hold, against the program. A row names a function; nothing here computes an answer.
// More files of the same form can be named in LEMEL_REFERENCE, separated by colons.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { difference, type Fns, type LogGroups, show, type Tolerance } from './compare.ts';
import { LOG_GROUPS } from './log.fns.ts';
import { RECKONING_FNS } from './reckoning.fns.ts';
import { TRADE_FNS } from './trade.fns.ts';
import { WEIGHING_FNS } from './weighing.fns.ts';

interface Row {
  readonly id: string;
  readonly fn: string;
  readonly input: never;
  readonly expected: unknown;
  readonly tolerance: Tolerance;
  readonly source: string | readonly string[];
}
interface Vector {
  readonly id: string;
  readonly group: string;
  readonly source: string;
}
interface CheckFile {
  readonly rows?: readonly Row[];
  readonly vectors?: readonly Vector[];
}

/** Rows whose printed figure lies outside their own tolerance of what they state; judged by the figure worked out again, and only while they need it. */
const REWORKED: Readonly<Record<string, { readonly expected: number; readonly because: string }>> = {
  'WIRE-016': {
    expected: 0.006654,
    because: 'π/4 × 0.2546² mm² × 10 mm × 13.07 g/cm³ is 6.654 mg; 6.7 mg is 0.7 % off, and the row allows 0.5 %',
  },
};

const FNS: Fns = { ...TRADE_FNS, ...WEIGHING_FNS, ...RECKONING_FNS };
const GROUPS: LogGroups = LOG_GROUPS;
const here = import.meta.dirname;
const readJson = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
const sources = readJson(join(here, 'sources.json')) as Readonly<Record<string, { readonly title: string; readonly url: string }>>;

function checkFiles(): readonly string[] {
  const own = readdirSync(here)
    .filter((name) => name.endsWith('.json') && name !== 'sources.json')
    .sort();
  const named = (process.env.LEMEL_REFERENCE ?? '').split(':').filter((path) => path !== '');
  return [...own.map((name) => join(here, name)), ...named];
}

function sourceOf({ source }: Row | Vector): string {
  const ids = typeof source === 'string' ? [source] : source;
  return ids.map((id) => (sources[id] ? `${sources[id].title} <${sources[id].url}>` : id)).join('; ');
}

function judge(row: Row): void {
  const where = `${row.id}, ${row.fn}(${show(row.input)})\n  source: ${sourceOf(row)}`;
  const fn = FNS[row.fn];
  if (!fn) throw new Error(`${where}\n  nothing in the program answers ${row.fn}`);
  const got = fn(row.input);
  const reworked = REWORKED[row.id];
  if (reworked) expect(difference(row.expected, got, row.tolerance), `${row.id} needs no reworking any more`).not.toBeNull();
  const why = difference(reworked?.expected ?? row.expected, got, row.tolerance);
  if (why !== null) {
    throw new Error(`${where}\n  expected ${show(row.expected)} within ${show(row.tolerance)}\n  got      ${show(got)}\n  ${why}`);
  }
}

async function judgeVector(vector: Vector): Promise<void> {
  const group = GROUPS[vector.group];
  if (!group) throw new Error(`${vector.id}: nothing in the program answers the group ${vector.group}; source: ${sourceOf(vector)}`);
  expect.hasAssertions();
  try {
    await group(vector as never);
  } catch (cause) {
    throw new Error(`${vector.id}, source: ${sourceOf(vector)}\n  ${cause instanceof Error ? cause.message : cause}`, { cause });
  }
}

for (const path of checkFiles()) {
  const { rows = [], vectors = [] } = readJson(path) as CheckFile;
  describe(basename(path), () => {
    it('holds rows or vectors, each with an id of its own', () => {
      const ids = [...rows, ...vectors].map(({ id }) => id);
      expect(ids.length).toBeGreaterThan(0);
      expect(new Set(ids).size).toBe(ids.length);
    });
    for (const row of rows) it(`${row.fn} · ${row.id}`, () => judge(row));
    for (const vector of vectors) it(`${vector.group} · ${vector.id}`, () => judgeVector(vector));
  });
}
