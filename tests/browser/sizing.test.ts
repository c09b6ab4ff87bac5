// A ring to be sized, from the counter to hand-back, as one person at the shop would do it.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type House, openHouse } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

test('the counter is there for whoever signed in', async () => {
  const counter = await house.visit();
  await counter.check();
  expect(await counter.page.title()).toContain('Counter');
  await counter.close();
});
