// The counter: who brings or collects, and what is in the house.
import { Hono } from 'hono';
import { Counter } from '../../../views/counter.tsx';
import { jobLine } from '../bench/bench.ts';
import { jobsInHouse } from '../bench/house.ts';
import { respond } from '../form/negotiate.ts';
import { type Env, policyFor, type Resource, whoAsks } from '../session/context.ts';

export const counter: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/', async (c) => {
    const inHouse = await jobsInHouse(web, policyFor(c));
    const rows = inHouse.map((row) => ({ ...jobLine(row, whoAsks(c).id), customer: row.customer, status: row.job.status ?? 'open' }));
    return respond(c, { title: 'Counter', current: '/', json: { jobs: rows }, body: Counter({ rows }) });
  });
  return app;
};
