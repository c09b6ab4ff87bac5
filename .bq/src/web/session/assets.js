// Style sheet, scripts and fonts, self-hosted: a short list of names, so that no path can be asked for.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Hono } from 'hono';

const require = createRequire(import.meta.url);
const FONTS = '@fontsource-variable/atkinson-hyperlegible';
export const assets = ({ assetsDir }) => {
  const ours = (name) => join(assetsDir, name);
  const files = {
    'lemel.css': [ours('lemel.css'), 'text/css; charset=utf-8'],
    'bench.css': [ours('bench.css'), 'text/css; charset=utf-8'],
    'charts.css': [ours('charts.css'), 'text/css; charset=utf-8'],
    'letter.css': [ours('letter.css'), 'text/css; charset=utf-8'],
    'screens.css': [ours('screens.css'), 'text/css; charset=utf-8'],
    'app.js': [ours('app.js'), 'text/javascript; charset=utf-8'],
    'beam.svg': [ours('beam.svg'), 'image/svg+xml'],
    'htmx.js': [require.resolve('htmx.org/dist/htmx.min.js'), 'text/javascript; charset=utf-8'],
    'next.woff2': [require.resolve(`${FONTS}-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2`), 'font/woff2'],
    'mono.woff2': [require.resolve(`${FONTS}-mono/files/atkinson-hyperlegible-mono-latin-wght-normal.woff2`), 'font/woff2'],
  };
  const loaded = new Map(
    Object.entries(files).map(([name, [path, type]]) => {
      const bytes = readFileSync(path);
      return [name, { bytes, type, tag: `"${createHash('sha256').update(bytes).digest('base64url')}"` }];
    }),
  );
  const app = new Hono();
  app.get('/assets/:file', (c) => {
    const file = loaded.get(c.req.param('file'));
    if (!file) return c.notFound();
    c.header('Cache-Control', 'no-cache');
    c.header('ETag', file.tag);
    if (c.req.header('if-none-match') === file.tag) return c.body(null, 304);
    return c.body(new Uint8Array(file.bytes), 200, { 'Content-Type': file.type });
  });
  return app;
};
