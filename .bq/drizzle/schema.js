// The ledger's tables as the screens read them; the numbered SQL files make them, and a test compares the two.
import { sql } from 'drizzle-orm';
import { blob, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
export const entry = sqliteTable('entry', {
  seq: integer('seq').primaryKey(),
  leaf: blob('leaf', { mode: 'buffer' }).notNull(),
  leafHash: blob('leaf_hash', { mode: 'buffer' }).notNull(),
  type: text('type').notNull(),
  at: integer('at').notNull(),
  writer: text('writer').generatedAlwaysAs(sql`json_extract(CAST(leaf AS TEXT), '$.by')`),
  /** The number of the entry that it corrects. */
  corrects: integer('corrects').generatedAlwaysAs(sql`CASE type WHEN 'corrected' THEN json_extract(CAST(leaf AS TEXT), '$.data.seq') END`),
});
export const entryLink = sqliteTable(
  'entry_link',
  { stream: text('stream').notNull(), n: integer('n').notNull(), seq: integer('seq').notNull() },
  (link) => [primaryKey({ columns: [link.stream, link.n] })],
);
export const node = sqliteTable(
  'node',
  { level: integer('level').notNull(), position: integer('position').notNull(), hash: blob('hash', { mode: 'buffer' }).notNull() },
  (at) => [primaryKey({ columns: [at.level, at.position] })],
);
export const checkpoint = sqliteTable('checkpoint', {
  size: integer('size').primaryKey(),
  signature: blob('signature', { mode: 'buffer' }).notNull(),
  issued: integer('issued').notNull(),
});
export const cosignature = sqliteTable(
  'cosignature',
  { size: integer('size').notNull(), name: text('name').notNull(), line: text('line').notNull() },
  (of) => [primaryKey({ columns: [of.size, of.name] })],
);
export const signingKey = sqliteTable('signing_key', {
  fromSize: integer('from_size').primaryKey(),
  vkey: text('vkey').notNull(),
});
export const command = sqliteTable('command', {
  id: text('id').notNull().primaryKey(),
  by: text('by').notNull(),
  mac: blob('mac', { mode: 'buffer' }).notNull(),
  fromSeq: integer('from_seq').notNull(),
  size: integer('size').notNull(),
  at: integer('at').notNull(),
});
export const sealed = sqliteTable(
  'sealed',
  {
    seq: integer('seq').notNull(),
    field: text('field').notNull(),
    subject: text('subject').notNull(),
    iv: blob('iv', { mode: 'buffer' }).notNull(),
    ciphertext: blob('ciphertext', { mode: 'buffer' }).notNull(),
  },
  (of) => [primaryKey({ columns: [of.seq, of.field] })],
);
export const thing = sqliteTable('thing', {
  n: integer('n').primaryKey(),
  id: text('id').notNull(),
  kind: text('kind').notNull(),
  stream: text('stream').notNull(),
  status: text('status'),
  stones: integer('stones'),
  words: text('words').notNull(),
  state: text('state').notNull(),
});
