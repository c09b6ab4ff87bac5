// A statement of the screens: made once by the query builder, kept as SQL that the reader prepares once, its rows under the names they are selected by.
import { Column, is, Placeholder, SQL, sql } from 'drizzle-orm';
import { QueryBuilder } from 'drizzle-orm/sqlite-core';
/** Where a statement begins. */
export const rows = new QueryBuilder();
/** A statement whose arguments have these names. Throws, when the program starts, for a column without a name of its own. */
export function statement(names, build) {
  const built = build(Object.fromEntries(names.map((name) => [name, sql.placeholder(name)])));
  const { sql: text, params } = built.toSQL();
  const columns = Object.entries(built._.selectedFields).map(([name, field]) => [name, columnOf(field)]);
  if (new Set(columns.map(([, column]) => column)).size < columns.length) throw new Error(`two columns of one name: ${text}`);
  const ask = async ({ read }, args) => {
    const found = await read(
      text,
      params.map((param) => (is(param, Placeholder) ? args[param.name] : param)),
    );
    return found.map((row) => Object.fromEntries(columns.map(([name, column]) => [name, decoded(row[column])])));
  };
  return Object.assign(ask, { sql: text });
}
/** The name under which the engine answers a selected field. */
function columnOf(field) {
  if (is(field, Column)) return field.name;
  if (is(field, SQL.Aliased)) return field.fieldAlias;
  throw new Error('name this column with .as()');
}
const decoded = (value) => (value instanceof ArrayBuffer ? Buffer.from(value) : value);
/** The members of a JSON list that was given as one argument: `IN` for a list of any length. */
export const inList = (column, list) => sql`${column} IN (SELECT value FROM json_each(${list}))`;
/** A list as such an argument. */
export const listOf = (values) => JSON.stringify([...new Set(values)]);
