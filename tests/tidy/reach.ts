// What an entry point reaches: files by their imports, and declarations by the names that stand in one another.
import { importsOf, type Sources } from './imports.ts';

/** Files that no entry point imports, however far round. */
export function filesUnreached(sources: Sources, entryPoints: readonly string[]): readonly string[] {
  const reached = new Set(entryPoints);
  for (const path of reached) for (const to of importsOf(path, sources[path] ?? '')) if (Object.hasOwn(sources, to)) reached.add(to);
  return Object.keys(sources).filter((path) => !reached.has(path));
}

interface Declaration {
  readonly at: string;
  /** A function, a table or a figure that other files may use; types are looked at with the unused code. */
  readonly isOffered: boolean;
  /** Every word of it. */
  readonly words: ReadonlySet<string>;
}
interface Module {
  readonly declared: ReadonlyMap<string, Declaration>;
  /** Where an imported name was declared. */
  readonly imported: ReadonlyMap<string, string>;
  /** Names in statements that run when the file is loaded. */
  readonly loose: ReadonlySet<string>;
}

/** Exports that nothing reaches, as "path name": neither an entry point nor what `kept` names. What only tests call is not reached. */
export function exportsUnreached(sources: Sources, entryPoints: readonly string[], kept: readonly string[]): readonly string[] {
  const modules = new Map(Object.entries(sources).map(([path, text]) => [path, moduleOf(path, text)]));
  const reached = new Set(kept);
  for (const [path, { declared, imported, loose }] of modules) {
    const begins = entryPoints.includes(path) ? [...declared.keys(), ...imported.keys()] : [...loose];
    for (const name of begins) for (const to of find(path, name, modules)) reached.add(to);
  }
  for (const at of reached) {
    const [path = '', name = ''] = at.split(' ');
    for (const word of modules.get(path)?.declared.get(name)?.words ?? []) for (const to of find(path, word, modules)) reached.add(to);
  }
  return [...modules.values()].flatMap(({ declared }) =>
    [...declared.values()].filter(({ at, isOffered }) => isOffered && !reached.has(at)).map(({ at }) => at),
  );
}

function find(path: string, name: string, modules: ReadonlyMap<string, Module>): readonly string[] {
  const module = modules.get(path);
  if (module?.declared.has(name)) return [`${path} ${name}`];
  const from = module?.imported.get(name);
  return from === undefined ? [] : [from];
}

const DECLARES = /^(export )?(?:async )?(function\*?|const|let|class|interface|type) (\w+)/;
const TYPES = ['interface', 'type'];
const wordsOf = (text: string): ReadonlySet<string> => new Set(text.match(/[A-Za-z_$][\w$]*/g) ?? []);

/** A file taken apart at its unindented lines. */
function moduleOf(path: string, text: string): Module {
  const chunks = codeOf(text).split(/\n(?=[^\s)\]}])/);
  const declared = new Map<string, Declaration>();
  const imported = new Map<string, string>();
  const loose = new Set<string>();
  for (const chunk of chunks) {
    const [, exported, kind = '', name] = DECLARES.exec(chunk) ?? [];
    if (/^(?:import|export \{)/.test(chunk)) for (const [as, from] of bindingsOf(path, chunk)) imported.set(as, from);
    else if (name)
      declared.set(name, { at: `${path} ${name}`, isOffered: exported !== undefined && !TYPES.includes(kind), words: wordsOf(chunk) });
    else for (const word of wordsOf(chunk)) loose.add(word);
  }
  return { declared, imported, loose };
}

/** "import { type A, b as c } from './d.ts'": what each is called here, and what it is there. */
function bindingsOf(path: string, chunk: string): readonly (readonly [as: string, from: string])[] {
  const [to] = importsOf(path, chunk);
  const [, list = ''] = /\{([^}]*)\}/.exec(chunk) ?? [];
  if (to === undefined) return [];
  return list.split(',').flatMap((one) => {
    const [, name, as] = /^\s*(?:type )?(\w+)(?: as (\w+))?\s*$/.exec(one) ?? [];
    return name ? [[as ?? name, `${to} ${name}`] as const] : [];
  });
}

/** A text without its comments. */
export const codeOf = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
