// The house rules, checked by reading the source as text: import directions, purity, one file per entry, sizes, the top level.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../src/entries/index.ts';
import { circlesIn, importsOf as importsIn } from './tidy/imports.ts';

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

  it('of views reach nothing of web, store, queries or ledger: they own their props', () => {
    const wrong = filesUnder('views').flatMap((path) =>
      importsOf(path)
        .filter((to) => !/^views\/|^src\/(units|trade|book|projections|letter)\//.test(to))
        .map((to) => `${path} → ${to}`),
    );
    expect(wrong).toEqual([]);
  });

  it('run in no circle', () => {
    expect(
      circlesIn(Object.fromEntries([...SOURCES, ...filesUnder('drizzle'), ...filesUnder('seed')].map((path) => [path, read(path)]))),
    ).toEqual([]);
  });
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
const code = (path: string) =>
  read(path)
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '');

describe('entries', () => {
  const types = Object.keys(ENTRIES);
  it('stand in one file each, named for the type', () => {
    const files = filesUnder('src/entries')
      .filter((path) => !path.endsWith('index.ts'))
      .map((path) => path.slice('src/entries/'.length, -3).replaceAll('-', '_'));
    expect([...files].sort()).toEqual([...types].sort());
  });
  it('are named by no other file, but sheets that compose them and the pages that offer or answer one', () => {
    const may = [/^src\/sheets\//, /^src\/entries\//, /^src\/letter\//, /^src\/web\//];
    const wrong = SOURCES.filter((path) => !may.some((pattern) => pattern.test(path))).flatMap((path) =>
      types.filter((type) => type.includes('_') && code(path).includes(`'${type}'`)).map((type) => `${path} names ${type}`),
    );
    expect(wrong).toEqual([]);
  });
  it('build facts and lines by their words, never by literals', () => {
    expect(filesUnder('src/entries').filter((path) => /\bfact:\s*'/.test(code(path)))).toEqual([]);
  });
});

/** Important things may be big; each with its reason. */
const BIG: Readonly<Record<string, string>> = {
  'src/trade/caution-table.ts': 'data: one caution after another, with its source',
  'src/trade/sources.ts': 'data: the sources that tables cite',
  'src/trade/stone-care-table.ts': 'data: stones against bench steps',
};
const limitOf = (path: string): number => {
  if (path.startsWith('src/entries/')) return path.endsWith('index.ts') ? 200 : 80;
  if (path.startsWith('src/web/') || path.startsWith('views/')) return 150;
  return 250;
};

describe('sizes', () => {
  it('stay within what a reader holds in mind', () => {
    const lines = (path: string) => read(path).split('\n').length;
    const over = SOURCES.filter((path) => !Object.hasOwn(BIG, path) && lines(path) > limitOf(path));
    expect(over.map((path) => `${path} ${lines(path)}`)).toEqual([]);
  });
  it('name no exception that is not needed', () => {
    const idle = Object.keys(BIG).filter((path) => !SOURCES.includes(path) || read(path).split('\n').length <= limitOf(path));
    expect(idle).toEqual([]);
  });
});

describe('the house', () => {
  it('has only its agreed top level', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' }).split('\n');
    const top = new Set(tracked.map((path) => path.split('/')[0] ?? '').filter((name) => name !== '' && !name.startsWith('.')));
    const agreed = [
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
