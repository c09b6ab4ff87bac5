// Every vector of log-vectors.json, by its group.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { LOG_GROUPS } from '../reference/log.fns.ts';

const file = z
  .object({ count: z.int(), vectors: z.array(z.looseObject({ group: z.string(), id: z.string() })) })
  .parse(JSON.parse(readFileSync(new URL('../reference/log-vectors.json', import.meta.url), 'utf8')));

describe('the published vectors', () => {
  it('are all there', () => expect(file.vectors.length).toBe(file.count));
  it.each(file.vectors.map((vector) => [vector.id, vector] as const))('%s', (_, vector) => {
    const check = LOG_GROUPS[vector.group];
    if (check === undefined) throw new Error(`no check for the group ${vector.group}`);
    check(vector);
  });
});
