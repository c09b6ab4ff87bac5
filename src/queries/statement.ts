// A statement of the screens: made once by the query builder, kept as SQL that the reader prepares once, its rows under the names they are selected by.
import { Column, is, Placeholder, SQL, sql } from 'drizzle-orm';
import { QueryBuilder } from 'drizzle-orm/sqlite-core';
import type { Value } from '../store/connection.ts';
import type { Store } from '../store/open.ts';

/** What a statement asks: the reader of a ledger, or one snapshot of it. */
export type Reading = Pick<Store, 'read'>;
/** A reader that can open what is sealed. */
export type Opening = Pick<Store, 'read' | 'keys'>;
/** Asks the ledger; BLOBs come as Buffers. Its `sql` is there to be looked at. */
export interface Statement<Name extends string, Row> {
  (store: Reading, args: Readonly<Record<Name, Value>>): Promise<readonly Row[]>;
  readonly sql: string;
}
interface Built<Row> {
  readonly _: { readonly selectedFields: Readonly<Record<string, unknown>>; readonly result: readonly Row[] };
  toSQL(): { readonly sql: string; readonly params: readonly unknown[] };
}

/** Where a statement begins. */
export const rows = new QueryBuilder();

/** A statement whose arguments have these names. Throws, when the program starts, for a column without a name of its own. */
export function statement<const Name extends string, Row>(
  names: readonly Name[],
  build: (of: Readonly<Record<Name, Placeholder<Name>>>) => Built<Row>,
): Statement<Name, Row> {
  const built = build(Object.fromEntries(names.map((name) => [name, sql.placeholder(name)])) as Record<Name, Placeholder<Name>>);
  const { sql: text, params } = built.toSQL();
  const columns = Object.entries(built._.selectedFields).map(([name, field]) => [name, columnOf(field)] as const);
  if (new Set(columns.map(([, column]) => column)).size < columns.length) throw new Error(`two columns of one name: ${text}`);
  const ask = async ({ read }: Reading, args: Readonly<Record<Name, Value>>) => {
    const found = await read(
      text,
      params.map((param) => (is(param, Placeholder) ? args[param.name as Name] : (param as Value))),
    );
    return found.map((row) => Object.fromEntries(columns.map(([name, column]) => [name, decoded(row[column])])) as Row);
  };
  return Object.assign(ask, { sql: text });
}

/** The name under which the engine answers a selected field. */
function columnOf(field: unknown): string {
  if (is(field, Column)) return field.name;
  if (is(field, SQL.Aliased)) return field.fieldAlias;
  throw new Error('name this column with .as()');
}

const decoded = (value: unknown): unknown => (value instanceof ArrayBuffer ? Buffer.from(value) : value);

/** The members of a JSON list that was given as one argument: `IN` for a list of any length. */
export const inList = (column: Column, list: Placeholder): SQL => sql`${column} IN (SELECT value FROM json_each(${list}))`;
/** A list as such an argument. */
export const listOf = (values: readonly (string | number)[]): string => JSON.stringify([...new Set(values)]);
