// The house rules, checked by reading the source as text: import directions, purity, one file per entry, sizes, the top level.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../src/entries/index.ts';
import { AWAITED, BIG, CASTS, LONG, STATEFUL } from './tidy/exceptions.ts';
import { functionsIn } from './tidy/functions.ts';
import { circlesIn, importsOf as importsIn, type Sources } from './tidy/imports.ts';
import { codeOf, exportsUnreached, filesUnreached } from './tidy/reach.ts';
import { castsIn, stateIn } from './tidy/text.ts';

const ROOT = join(import.meta.dirname, '..');

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesUnder(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const SOURCES = [...filesUnder('src'), ...filesUnder('views')];
const HOUSE: Sources = Object.fromEntries([...SOURCES, ...filesUnder('drizzle'), ...filesUnder('seed')].map((path) => [path, read(path)]));
const PROGRAM: Sources = Object.fromEntries(SOURCES.map((path) => [path, read(path)]));
/** What is started by name: the server, the command line, the demo. */
const PROGRAMS = ['src/server.ts', 'src/cli.ts', 'src/check-worker.ts'];
const STARTED = [...PROGRAMS, ...filesUnder('seed').filter((path) => /\/(?:seed|demo|pictures)\.ts$/.test(path))];
/** The members of a list of exceptions that nothing needs. */
const idle = (exceptions: Readonly<Record<string, string>>, needed: readonly string[]): readonly string[] =>
  Object.keys(exceptions).filter((one) => !needed.includes(one));

/** What a view imports beyond its room: values of views, units, trade and book, and types of what projections and letter hold. */
const foreignToViews = (path: string, text: string): readonly string[] =>
  text
    .split(/^(?=import |export )/m)
    .flatMap((statement) =>
      importsIn(path, statement)
        .filter((to) => !/^views\/|^src\/(?:units|trade|book)\//.test(to))
        .filter((to) => !(statement.startsWith('import type ') && /^src\/(?:projections|letter)\//.test(to))),
    )
    .map((to) => `${path} → ${to}`);

const importsOf = (path: string): readonly string[] => importsIn(path, read(path));
const packagesOf = (path: string): readonly string[] =>
  [...read(path).matchAll(/^(?:import|export|\} from)\b(?:.*\bfrom)? '([^.'][^']*)';$/gm)].map(([, name]) => name ?? '');

/** From the inside out: a folder imports only those before it, and itself. */
const ORDER = [
  'units',
  'trade',
  'weighing',
  'reckoning',
  'book',
  'entries',
  'sheets',
  'ledger',
  'projections',
  'letter',
  'store',
  'queries',
  'web',
];
/** trade, weighing and reckoning stand side by side; each may use those named. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  log: [],
  trade: ['units', 'weighing'],
  weighing: ['units', 'trade'],
  reckoning: ['units', 'weighing', 'trade'],
  ledger: ['units', 'trade', 'weighing', 'reckoning', 'book', 'entries', 'sheets', 'log'],
  store: ['drizzle', 'units', 'trade', 'weighing', 'reckoning', 'book', 'entries', 'sheets', 'ledger', 'projections', 'log'],
  letter: [...ORDER.slice(0, ORDER.indexOf('letter')), 'log'],
  queries: [...ORDER.slice(0, ORDER.indexOf('queries')), 'drizzle'],
  web: [...ORDER, 'log', 'views'],
};
const PURE = ['units', 'trade', 'weighing', 'reckoning', 'book', 'entries', 'sheets', 'log', 'ledger', 'projections', 'letter'];

const folderOf = (path: string) =>
  path.startsWith('views/')
    ? 'views'
    : path.startsWith('src/')
      ? path.split('/').length > 2
        ? (path.split('/')[1] ?? '')
        : 'root'
      : (path.split('/')[0] ?? '');

describe('imports', () => {
  it('go inwards only', () => {
    const wrong = SOURCES.filter((path) => !['root', 'views'].includes(folderOf(path))).flatMap((path) => {
      const from = folderOf(path);
      const allowed = ALSO[from] ?? ORDER.slice(0, ORDER.indexOf(from));
      return importsOf(path)
        .filter((to) => folderOf(to) !== from && !allowed.includes(folderOf(to)))
        .map((to) => `${path} → ${to}`);
    });
    expect(wrong).toEqual([]);
  });

  it('of views are their own files, units, the trade’s words and the book’s; of what they draw they see the shape alone', () => {
    expect(filesUnder('views').flatMap((path) => foreignToViews(path, read(path)))).toEqual([]);
  });
  it('of a view that reached further would be found', () => {
    const planted = [
      "import { readPhoto } from '../src/store/photos.ts';",
      "import type { Thing } from '../src/ledger/thing.ts';",
      "import { letterOf } from '../src/letter/letter.ts';",
      "import type { Web } from '../src/web/session/context.ts';",
      "import { jobLines } from '../src/queries/jobs.ts';",
      "import type { Letter } from '../src/letter/letter.ts';",
      "import { formatMass } from '../src/units/mass.ts';",
      "import { Tag } from './parts/tag.tsx';",
    ];
    expect(foreignToViews('views/job.tsx', planted.join('\n')).map((wrong) => wrong.split(' → ')[1])).toEqual([
      'src/store/photos.ts',
      'src/ledger/thing.ts',
      'src/letter/letter.ts',
      'src/web/session/context.ts',
      'src/queries/jobs.ts',
    ]);
  });

  it('run in no circle', () => expect(circlesIn(HOUSE)).toEqual([]));
  it('that do run in a circle would be found, types too, and named', () => {
    const planted = {
      'src/web/a.ts': "import { b } from '../../views/b.tsx';",
      'views/b.tsx': "import type { A } from './c.ts';",
      'views/c.ts': "const a = await import('../src/web/a.ts');",
      'views/d.ts': "import { a } from '../src/web/a.ts';",
    };
    expect(circlesIn(planted)).toEqual(['src/web/a.ts → views/b.tsx → views/c.ts → src/web/a.ts']);
    expect(circlesIn({ ...planted, 'views/c.ts': "import { d } from './gone.ts';" })).toEqual([]);
    expect(circlesIn({ 'src/a.ts': "export { a } from './a.ts';" })).toEqual(['src/a.ts → src/a.ts']);
  });

  it('of entry files do not reach each other', () => {
    const wrong = filesUnder('src/entries')
      .filter((path) => !path.endsWith('index.ts'))
      .flatMap((path) =>
        importsOf(path)
          .filter((to) => to.startsWith('src/entries/'))
          .map((to) => `${path} → ${to}`),
      );
    expect(wrong).toEqual([]);
  });

  it('of screens write no SQL of their own: all of it stands in src/queries', () => {
    const screens = SOURCES.filter((path) => ['web', 'views', 'letter'].includes(folderOf(path)));
    const sql = /\bSELECT\s|\bINSERT\s+INTO\b|\bDELETE\s+FROM\b|\bUPDATE\s+\w+\s+SET\b|\bsql`|\bstore\.read\(/;
    expect(screens.filter((path) => sql.test(code(path)) || packagesOf(path).some((name) => name.startsWith('drizzle')))).toEqual([]);
  });

  it('name their file with its extension', () => {
    expect(
      SOURCES.flatMap((path) =>
        importsOf(path)
          .filter((to) => !/\.(tsx?|json)$/.test(to))
          .map((to) => `${path} → ${to}`),
      ),
    ).toEqual([]);
  });
});

describe('pure folders', () => {
  const pure = SOURCES.filter((path) => PURE.includes(folderOf(path)));
  it('use no Node, no database, no web framework', () => {
    const wrong = pure.flatMap((path) =>
      packagesOf(path)
        .filter((name) => name !== 'zod')
        .map((name) => `${path} → ${name}`),
    );
    expect(wrong).toEqual([]);
  });
  it('use no clock, no randomness, no environment', () => {
    const wrong = pure.filter((path) => /\bDate\.now\b|new Date\(\)|Math\.random|process\.|crypto\.|performance\./.test(code(path)));
    expect(wrong).toEqual([]);
  });
  it('leave the environment and the time to the outermost files', () => {
    const known = ['src/server.ts', 'src/cli.ts', 'src/machine.ts'];
    expect(SOURCES.filter((path) => /process\.env|Date\.now\(\)/.test(code(path)) && !known.includes(path))).toEqual([]);
  });
});

/** The text of a file without its comments. */
const code = (path: string) => codeOf(read(path));

/** Files that name an entry type; each with its reason. */
const NAMING: Readonly<Record<string, string>> = {
  'src/letter/check-data.ts': 'the slip that was printed names the size of the record it was printed from',
  'src/letter/slip-words.ts': 'a slip says what came in, what was agreed and the day it was moved to',
  'src/letter/job-told.ts': 'every paper ends with the terms that its agreement names',
  'src/web/setup/terms.ts': 'terms are written with the digest of their text, which no form asks for',
  'src/letter/words.ts': 'a letter tells metal cut away and metal added each under its own heading',
  'src/web/bench/balance-forms.ts': 'writes a check and ten readings by forms of their own',
  'src/web/bench/calculator.ts': 'carries an estimate into the forms that take one',
  'src/web/bench/doubted.ts': 'a check is no weighing that a failed check puts in doubt',
  'src/web/counter/slip.ts': 'writes that a slip was printed',
  'src/web/job/balance-story.ts': 'reads the history of a balance alone',
  'src/web/job/cautions.ts': 'which step at the bench a form is about',
  'src/web/job/job.ts': 'offers the hand-back with an exception as its sheet',
  'src/web/job/stones.ts': 'what may be done with stones, from their page',
  'src/web/setup/devices.ts': 'enrols a screen by a link',
  'src/web/setup/first-run.ts': 'writes the first entries of a ledger',
  'src/web/setup/setup-lists.ts': 'what may be added to each list of Setup',
  'views/balance.tsx': 'leads to the calibration of that balance',
  'views/job.tsx': 'leads to the photograph form',
  'views/parts/notices.tsx': 'leads to the metal that a finish sheet lacks',
  'views/reckoning.tsx': 'leads to the explanation of a difference',
  'views/safe.tsx': 'leads to what names a place',
  'views/tell-first.tsx': 'leads to the explanation of a difference',
};

describe('entries', () => {
  const types = Object.keys(ENTRIES);
  it('stand in one file each, named for the type', () => {
    const files = filesUnder('src/entries')
      .filter((path) => !path.endsWith('index.ts'))
      .map((path) => path.slice('src/entries/'.length, -3).replaceAll('-', '_'));
    expect([...files].sort()).toEqual([...types].sort());
  });
  it('are named by no other file, but sheets that compose them and those that say why', () => {
    const named = (path: string) => types.filter((type) => type.includes('_') && new RegExp(`\\b${type}\\b`).test(code(path)));
    const others = SOURCES.filter((path) => !/^src\/(entries|sheets)\//.test(path));
    const wrong = others
      .filter((path) => !Object.hasOwn(NAMING, path))
      .flatMap((path) => named(path).map((type) => `${path} names ${type}`));
    expect(wrong).toEqual([]);
    expect(Object.keys(NAMING).filter((path) => !others.includes(path) || named(path).length === 0)).toEqual([]);
  });
  it('are read as corrected wherever something is told of them', () => {
    const outside = SOURCES.filter((path) => !['ledger', 'store'].includes(folderOf(path)));
    expect(outside.filter((path) => /import \{[^}]*\bfactsOf\b[^}]*\} from '[./]*ledger\/corrections\.ts'/.test(read(path)))).toEqual([]);
  });
  it('build facts and lines by their words, never by literals', () => {
    expect(filesUnder('src/entries').filter((path) => /\bfact:\s*'/.test(code(path)))).toEqual([]);
  });
});

const limitOf = (path: string): number => {
  if (path.startsWith('src/entries/')) return path.endsWith('index.ts') ? 200 : 80;
  if (path.startsWith('src/web/') || path.startsWith('views/')) return 150;
  return 250;
};

describe('sizes', () => {
  const lines = (path: string) => read(path).split('\n').length;
  const over = SOURCES.filter((path) => lines(path) > limitOf(path));
  it('stay within what a reader holds in mind', () => {
    expect(over.filter((path) => !Object.hasOwn(BIG, path)).map((path) => `${path} ${lines(path)}`)).toEqual([]);
    expect(idle(BIG, over)).toEqual([]);
  });

  const FUNCTION_MAX = 40;
  const VIEW_MAX = 60;
  it('of functions stay within what a reader takes in at once', () => {
    const long = Object.entries(HOUSE).flatMap(([path, text]) =>
      functionsIn(text)
        .filter(({ lines: has }) => has > (path.startsWith('views/') ? VIEW_MAX : FUNCTION_MAX))
        .map(({ name, lines: has }) => ({ at: `${path} ${name}`, has })),
    );
    expect(long.filter(({ at }) => !Object.hasOwn(LONG, at)).map(({ at, has }) => `${at} ${has}`)).toEqual([]);
    expect(
      idle(
        LONG,
        long.map(({ at }) => at),
      ),
    ).toEqual([]);
  });
  it('of functions are measured from the first line to the last, however they are written', () => {
    const planted = [
      'export async function spread(',
      '  one: string,',
      '): Promise<{ a: number }> {',
      '  if (one) {',
      '    return { a: 1 };',
      '  }',
      '  return { a: 2 };',
      '}',
      '',
      'const short = (a: number) =>',
      '  a +',
      '  1;',
      '',
      'const TABLE: Record<string, () => void> = {',
      '  one() {',
      '    go();',
      '  },',
      '};',
      'const inner: Resource = (web) => {',
      "  app.get('/', async (c) => {",
      '    return c;',
      '  });',
      '};',
    ];
    expect(functionsIn(planted.join('\n')).map(({ name, lines: has }) => [name, has])).toEqual([
      ['spread', 8],
      ['short', 3],
      ['one', 3],
      ['inner', 5],
      ["app.get('/', async (c) => {", 3],
    ]);
  });
});

describe('what nobody needs', () => {
  const awaited = AWAITED.flatMap(({ of }) => Object.entries(of).flatMap(([path, names]) => names.map((name) => `${path} ${name}`)));
  const waitingFiles = new Set(awaited.map((at) => at.split(' ')[0]));
  it('is in no file: each is reached from a program', () => {
    expect(filesUnreached(HOUSE, STARTED).filter((path) => !waitingFiles.has(path))).toEqual([]);
  });
  it('is in no export: each is called by the program, or is awaited for a reason', () => {
    expect(exportsUnreached(PROGRAM, PROGRAMS, awaited)).toEqual([]);
  });
  it('is awaited no longer once it is called', () => {
    const uncalled = exportsUnreached(PROGRAM, PROGRAMS, []);
    expect(awaited.filter((at) => !uncalled.includes(at))).toEqual([]);
  });
  it('would be found: an island of files, a call that only a test or dead code makes', () => {
    const planted = {
      'src/server.ts': "import { used as asUsed } from './a.ts';\nasUsed();",
      'src/a.ts':
        "import { deep, other } from './b.ts';\nexport const used = () => deep();\nexport function alone() {\n  return other();\n}\n",
      'src/b.ts': 'export const deep = () => 1;\nexport const other = () => 2; // alone\nexport interface Shape {}\n',
      'src/island.ts': "import { deep } from './b.ts';\nexport const here = deep;\n",
    };
    expect(filesUnreached(planted, ['src/server.ts'])).toEqual(['src/island.ts']);
    expect(exportsUnreached(planted, ['src/server.ts'], [])).toEqual(['src/a.ts alone', 'src/b.ts other', 'src/island.ts here']);
    expect(exportsUnreached(planted, ['src/server.ts'], ['src/a.ts alone'])).toEqual(['src/island.ts here']);
  });
});

describe('state and casts', () => {
  it('of modules is none that changes', () => {
    const stateful = SOURCES.filter((path) => stateIn(read(path)).length > 0);
    expect(stateful.filter((path) => !Object.hasOwn(STATEFUL, path))).toEqual([]);
    expect(idle(STATEFUL, stateful)).toEqual([]);
  });
  it('of modules would be found', () => {
    const planted = ['let last = 0;', 'const SEEN = new Map<string, number>();', 'const LIST: string[] = [];', 'export let a: string;'];
    const fine = [
      'const NONE: ReadonlyMap<string, string> = new Map();',
      '  let inside = 0;',
      'const A = [1];',
      "const B = new Set(['a']);",
    ];
    expect(stateIn([...planted, ...fine].join('\n'))).toHaveLength(planted.length);
  });
  it('of sheets are none', () => {
    const cast = filesUnder('src/sheets').filter((path) => castsIn(read(path)).length > 0);
    expect(cast.filter((path) => !Object.hasOwn(CASTS, path))).toEqual([]);
    expect(idle(CASTS, cast)).toEqual([]);
  });
  it('of sheets would be found', () => {
    const planted = ['const a = b as never;', '  return x as { a: 1 };', '  line(y as unknown as Z),'];
    const fine = ["const a = ['x'] as const;", "import { lines as paragraph } from './a.ts';", "say('as it came');", '// as Sum'];
    expect(castsIn([...planted, ...fine].join('\n'))).toHaveLength(planted.length);
  });
});

/** The folders in the first column of the map. */
const mapped = (map: string): readonly string[] => [...map.matchAll(/^\| `([\w/]+)` \|/gm)].map(([, folder]) => folder ?? '');
/** Files named with their folder, but for those that a new entry would add. */
const filesNamed = (map: string): readonly string[] =>
  [...map.replace(/## Add an entry[\s\S]*?(?=\n## |$)/, '').matchAll(/`((?:src|views|tests|seed|drizzle)\/[\w./-]+\.\w+)`/g)].map(
    ([, path]) => path ?? '',
  );

describe('the house', () => {
  it('has only its agreed top level', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' }).split('\n');
    const top = new Set(tracked.map((path) => path.split('/')[0] ?? '').filter((name) => name !== ''));
    const agreed = [
      '.ci',
      '.github',
      '.gitignore',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'biome.json',
      'src',
      'drizzle',
      'tests',
      'views',
      'seed',
    ];
    expect([...top].filter((name) => !agreed.includes(name))).toEqual([]);
  });
  it('is as its map says: every folder of it, every room of web, and every file it names', () => {
    const map = read('DEVELOPERS.md');
    const folders = readdirSync(join(ROOT, 'src'), { withFileTypes: true }).flatMap((one) =>
      one.isDirectory() ? [`src/${one.name}`] : [],
    );
    expect(mapped(map).toSorted()).toEqual([...folders, 'views', 'drizzle', 'seed', 'tests'].toSorted());
    const rooms = readdirSync(join(ROOT, 'src/web'));
    expect(rooms.filter((room) => !map.includes(`\`${room}\``))).toEqual([]);
    expect(filesNamed(map).filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });
  it('would be found to differ from its map', () => {
    const map = '| `src/web` | pages |\n| `src/gone` | nothing |\n\nSee `src/web/gone.ts`.\n\n## Add an entry\n\n`src/entries/new.ts`\n';
    expect(mapped(map)).toEqual(['src/web', 'src/gone']);
    expect(filesNamed(map)).toEqual(['src/web/gone.ts']);
  });
  it('begins every source file with what it is', () => {
    expect(SOURCES.filter((path) => !/^\/\/ \S/.test(read(path)))).toEqual([]);
  });
  it('keeps no inline script, style or handler in its views', () => {
    const wrong = filesUnder('views').filter((path) =>
      /\sstyle=|\son[a-z]+=|hx-on|js:|<script(?! src=)(?! type="application)/.test(code(path)),
    );
    expect(wrong).toEqual([]);
  });
  it('stays small enough to read', () => {
    expect(statSync(join(ROOT, 'README.md')).size).toBeLessThan(12_000);
  });
});
