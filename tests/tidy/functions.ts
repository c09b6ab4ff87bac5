// How long each function of a file is. The source is laid out by the formatter, so a function ends where its indentation does.

/** A function's name, or its first line where it has none, and how many lines it has in all. */
export interface FunctionSize {
  readonly name: string;
  readonly lines: number;
}

const CONTROL = /^\s*(?:\} )?(?:if|for|while|switch|catch|else|return|await|do)\b/;
/** A table of functions is no function, and its type may hold an arrow. */
const isTable = (line: string): boolean => /= [{[]$/.test(line);
const isHead = (line: string): boolean =>
  (/\bfunction\b|=>/.test(line) && !isTable(line)) || (/^\s+(?:async )?[\w#]+\(.*\{$/.test(line) && !CONTROL.test(line));
const nameOf = (line: string): string =>
  /^\s*(?:export )?(?:async )?(?:function\*?|const) (\w+)/.exec(line)?.[1] ??
  /^\s+(?:async )?(\w+)\([^=]*\{$/.exec(line)?.[1] ??
  line.trim();
const indentOf = (line: string): number => line.length - line.trimStart().length;
/** "}: Props) {" closes one bracket and opens the next: the function goes on. */
const goesOn = (line: string): boolean => /^\s*[)\]}]/.test(line) && /(?:[{([]|=>)$/.test(line);

/** Every function of a text, nested ones too. */
export function functionsIn(text: string): readonly FunctionSize[] {
  const lines = text.split('\n');
  return lines.flatMap((line, at) =>
    isHead(line) && !/^\s*(?:\/\/|\*|\/\*)/.test(line) ? [{ name: nameOf(line), lines: lastLine(lines, at) - at + 1 }] : [],
  );
}

function lastLine(lines: readonly string[], at: number): number {
  const indent = indentOf(lines[at] ?? '');
  const next = lines.findIndex((line, n) => n > at && line.trim() !== '' && indentOf(line) <= indent && !goesOn(line));
  if (next < 0) return lines.length - 1;
  if (/^\s*[)\]}]/.test(lines[next] ?? '')) return next;
  return lines.slice(0, next).findLastIndex((line) => line.trim() !== '');
}
