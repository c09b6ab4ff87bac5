// What the source says of its own imports: which file needs which, and where that runs in a circle. Types count: a reader follows them too.
import { posix } from 'node:path';

/** Files by their path from the root, and their text. */
export type Sources = Readonly<Record<string, string>>;

/** The files that a file imports by a relative path, static or dynamic, values or types, as paths from the root. */
export const importsOf = (path: string, text: string): readonly string[] =>
  [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']+)'/g)].map(([, to]) => posix.join(posix.dirname(path), to ?? ''));

/** Every circle, each as the shortest way round: "a → b → a". */
export function circlesIn(sources: Sources): readonly string[] {
  const paths = Object.keys(sources).sort();
  const edges = new Map(paths.map((path) => [path, importsOf(path, sources[path] ?? '').filter((to) => Object.hasOwn(sources, to))]));
  const circles = new Map<string, string>();
  for (const path of paths) {
    const way = wayRound(path, edges);
    if (way && !circles.has([...way].sort().join())) circles.set([...way].sort().join(), [...way, path].join(' → '));
  }
  return [...circles.values()];
}

/** The shortest way from a file back to itself. */
function wayRound(start: string, edges: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const at of queue) {
    for (const to of edges.get(at) ?? []) {
      if (to === start) return wayTo(at, cameFrom);
      if (cameFrom.has(to)) continue;
      cameFrom.set(to, at);
      queue.push(to);
    }
  }
  return null;
}

function wayTo(end: string, cameFrom: ReadonlyMap<string, string>): readonly string[] {
  const before = cameFrom.get(end);
  return before === undefined ? [end] : [...wayTo(before, cameFrom), end];
}
