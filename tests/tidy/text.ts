// What stands in a file: casts, and what it keeps outside of its functions.
import { codeOf } from './reach.ts';

/** "as T" in expressions; renamed imports, `as const` and words in quotes are none. */
export const castsIn = (text: string): readonly string[] =>
  codeOf(text)
    .split('\n')
    .filter((line) => !/^(?:import|export) |^ {2}(?:type )?\w+(?: as \w+)?,$/.test(line))
    .map((line) => line.replace(/'(?:[^'\\]|\\.)*'|`[^`$]*`/g, "''"))
    .filter((line) => /\bas (?!const\b)[\w{[(]/.test(line))
    .map((line) => line.trim());

/** Variables of a module, and collections that are empty when it is loaded and so are filled later. */
export const stateIn = (text: string): readonly string[] =>
  [
    ...codeOf(text).matchAll(
      /^(?:export )?(?:(?:let|var)\b|const \w+(?:: (?!Readonly).*)? = (?:new (?:Weak)?(?:Map|Set)(?:<.*>)?\(\)|\[\]|\{\});).*$/gm,
    ),
  ].map(([line]) => line);
