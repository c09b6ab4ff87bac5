// The counter: who brings or collects, and what is in the house.
import { Hono } from 'hono';
import { Counter } from '../../../views/counter.js';
import { jobLine } from '../bench/bench.js';
import { jobsInHouse } from '../bench/house.js';
import { respond } from '../form/negotiate.js';
import { policyFor, whoAsks } from '../session/context.js';
export const counter = (web) => {
  const app = new Hono();
  app.get('/', async (c) => {
    const inHouse = await jobsInHouse(web, policyFor(c));
    const rows = inHouse.map((row) => ({ ...jobLine(row, whoAsks(c).id), customer: row.customer, status: row.job.status ?? 'open' }));
    return respond(c, { title: 'Counter', current: '/', json: { jobs: rows }, body: Counter({ rows }) });
  });
  return app;
};
