// Who came in and who was kept out is a line of the program's log, by a code that never changes and ids alone (OWASP ASVS 5.0.0, 16.2.5, 16.3.1,
// 16.3.2): no name, no PIN, nothing typed and no address with what stands in it.
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openSite, PASSWORD, PIN, type Site } from './site.ts';

let site: Site;
beforeEach(async () => {
  site = await openSite();
});
afterEach(() => site.close());

const codes = () => site.noted.splice(0).map(({ happened }) => happened);
const WRONG = '0000';

it('says who signed in, who locked, and whose PIN was wrong or not even tried', async () => {
  await site.as('owner');
  const person = site.shop.owner;
  const signIn = (pin: string) => site.nobody.post('/sign-in', { person, pin, back: '/' });
  await signIn(PIN);
  expect(site.noted.splice(0)).toEqual([{ happened: 'signed_in', person, screen: 'this-pc' }]);
  for (let n = 0; n < 4; n++) await signIn(WRONG);
  expect(site.noted.splice(0)).toEqual([...Array(3).fill({ happened: 'pin_wrong', person }), { happened: 'not_tried', person }]);
  await (await site.as('owner')).post('/lock', {});
  expect(codes()).toEqual(['locked']);
});

it('says a wrong password, a role that was refused, a form from elsewhere, another host, a link that is none', async () => {
  const [owner, counter] = [await site.as('owner'), await site.as('counter')];
  const form = await owner.form('/write/person_joined');
  await owner.post('/write/person_joined', { ...form, name: 'Zoe Secret', role: 'bench', password: 'not the one' });
  expect(codes()).toEqual(['password_wrong']);
  await counter.get('/owner?for=Zoe');
  expect(site.noted.splice(0)).toEqual([
    { happened: 'role_refused', person: site.people.get('counter'), screen: 'this-pc', route: 'GET /owner' },
  ]);
  await counter.post('/lock', {}, { origin: 'http://evil.test', 'sec-fetch-site': 'cross-site' });
  await site.nobody.get('/', { host: 'evil.test' });
  await site.nobody.get('/first-run?key=guessed');
  await site.nobody.get('/enrol?key=guessed');
  expect(codes()).toEqual(['other_site', 'other_host', 'link_refused', 'link_refused']);
});

it('names nobody and holds nothing that was typed', async () => {
  const owner = await site.as('owner');
  for (const pin of [PIN, WRONG]) await site.nobody.post('/sign-in', { person: site.shop.owner, pin, back: '/find?q=Ruth' });
  await owner.get('/find?q=Ruth');
  await owner.post('/write/person_joined', {
    ...(await owner.form('/write/person_joined')),
    name: 'Zoe',
    role: 'bench',
    password: PASSWORD,
  });
  const said = JSON.stringify(site.noted);
  expect(site.noted.length).toBeGreaterThan(1);
  for (const words of [PIN, WRONG, PASSWORD, 'Ada', 'Zoe', 'Ruth']) expect(said).not.toContain(words);
});
