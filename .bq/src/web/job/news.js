// Whether somebody wrote on a job since its page was shown: asked again and again by the page itself, answered by a tag while nothing is new.
import { Hono } from 'hono';
import { News } from '../../../views/parts/news.js';
import { numbersFrom } from '../../queries/entries.js';
import { wholeNumber } from '../session/address.js';
import { jobAt } from './job-at.js';
export const news = (web) => {
  const app = new Hono();
  app.get('/jobs/:job/news', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const after = wholeNumber(c.req.query('after')) ?? 0;
    const seqs = await numbersFrom(web.store, job.id, after);
    const tag = `"${after + seqs.length}"`;
    c.header('ETag', tag);
    c.header('Cache-Control', 'private, no-cache');
    if (c.req.header('if-none-match') === tag) return c.body(null, 304);
    return c.html(News({ job: job.id, seqs }) ?? '');
  });
  return app;
};
