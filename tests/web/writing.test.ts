// A form to the ledger and back: what is refused is said beside its field and nothing typed is lost; what is written is written once.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ENTRIES } from '../../src/entries/index.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { line } from '../shop.ts';
import { type Fields, inputsOf, openSite, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
beforeEach(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterEach(() => site.close());

/** A job with one piece, agreed, in the ledger. */
async function agreedJob(): Promise<{ job: string; piece: string }> {
  const { shop } = site;
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  await shop.write(
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      job,
      piece,
      kind: 'ring',
      description: 'Signet ring',
      parts: [{ part: 'all', metal: 'gold-375' }],
      stones: 0,
      weight: shop.grams('6.82'),
    }),
    line('work_agreed', {
      job,
      steps: ['size-up'],
      priceKind: 'free',
      promise: '2026-12-08',
      dust: 'shop',
      cutMetal: 'customer',
      oldParts: 'customer',
      terms: '1',
      agreedBy: 'signature',
    }),
  );
  return { job, piece };
}
const entries = async () => Number((await site.shop.store.read('SELECT COUNT(*) AS n FROM entry'))[0]?.n);
const seqIn = (answer: Response) =>
  Number(
    /written=(\d+)|entries\/(\d+)/
      .exec(answer.headers.get('location') ?? '')
      ?.slice(1)
      .find(Boolean),
  );

/** The weighing form of a job, filled in. */
async function weighing(job: string, text: string, more: Fields = {}): Promise<Fields> {
  const form = await owner.form(`/jobs/${job}/write/piece_weighed`);
  return { ...form, state: 'cleaned and dry', 'weight.text': text, 'weight.balance': site.shop.balance, ...more };
}

describe('the generic form', () => {
  it('opens for every entry but those that a page of their own writes', async () => {
    const { job } = await agreedJob();
    const statuses = new Map<string, number>();
    for (const type of Object.keys(ENTRIES)) {
      for (const path of [`/write/${type}`, `/jobs/${job}/write/${type}`]) {
        const { status } = await owner.get(path);
        expect(statuses.get(type) ?? status, type).toBe(status);
        statuses.set(type, status);
      }
    }
    const barred = [...statuses].filter(([, status]) => status !== 200);
    expect(barred.map(([type, status]) => [type, status]).toSorted()).toEqual(
      ['baseline_accepted', 'corrected', 'ledger_started', 'terms_set', 'ticket_issued'].map((type) => [type, 404]),
    );
    expect(barred.every(([type]) => entryType(type).ownPage)).toBe(true);
  });
});

describe('a weight', () => {
  it.each([
    ['', 'weight', 'Fill this in.'],
    ['0', 'weight.text', 'A weight is more than zero'],
    ['-3', 'weight.text', 'A weight is more than zero'],
    ['abc', 'weight.text', 'in figures'],
    ['1000000000', 'weight.text', 'heavier than anything'],
    ['401', 'weight', 'over the largest load'],
    ['1.2.3', 'weight.text', 'in figures'],
  ])('of “%s” is refused beside its field, and the rest of the form is kept', async (text, _field, words) => {
    const { job } = await agreedJob();
    const before = await entries();
    const answer = await owner.post(`/jobs/${job}/write/piece_weighed`, await weighing(job, text));
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toContain('<title>Error: ');
    expect(html).toContain(words);
    expect(inputsOf(html)).toMatchObject({ state: 'cleaned and dry', 'weight.text': text });
    expect(await entries()).toBe(before);
  });

  it('with a comma is the same weight', async () => {
    const { job } = await agreedJob();
    const answer = await owner.post(`/jobs/${job}/write/piece_weighed`, await weighing(job, '6,80'));
    expect(answer.status).toBe(303);
    const { leaf } = (await owner.json(`/entries/${seqIn(answer)}`)) as { leaf: { data: { weight: object } } };
    expect(leaf.data.weight).toMatchObject({ text: '6,80', ng: 6_800_000_000, unit: 'g' });
  });

  it('finer than the balance’s step, or far from what is expected, is asked again and goes in with a second reading and a reason', async () => {
    const { job } = await agreedJob();
    for (const text of ['6.815', '3.41']) {
      const asked = await owner.post(`/jobs/${job}/write/piece_weighed`, await weighing(job, text));
      expect(asked.status).toBe(422);
      expect(await asked.text()).toContain('weight.because');
    }
    const told = await weighing(job, '3.41', { 'weight.again': '3.41', 'weight.because': 'half of it is on loan' });
    expect((await owner.post(`/jobs/${job}/write/piece_weighed`, told)).status).toBe(303);
  });
});

describe('text', () => {
  const note = async (job: string, text: string) => {
    const form = await owner.form(`/jobs/${job}/write/note_added`);
    const named = Object.keys(form).find((name) => name === 'about');
    return owner.post(`/jobs/${job}/write/note_added`, { ...form, about: named ? (form.about ?? job) : job, text });
  };
  it('over 4,000 characters is refused in words', async () => {
    const { job } = await agreedJob();
    const answer = await note(job, 'x'.repeat(4001));
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('at most 4,000 characters');
  });
  it.each(['💍 emoji', 'من اليمين', '<script>alert(1)</script>', '</textarea><b>', 'e\u0301 becomes é', 'O\'Neil & "daughters"'])(
    'like “%s” comes back as it was typed and never as markup',
    async (text) => {
      const { job } = await agreedJob();
      const answer = await note(job, text);
      expect(answer.status).toBe(303);
      const html = await (await owner.get(`/entries/${seqIn(answer)}`)).text();
      expect(html).not.toContain('<script>alert');
      const { leaf } = (await owner.json(`/entries/${seqIn(answer)}`)) as { leaf: { sealed: object; data: object } };
      expect(Object.keys(leaf.sealed)).toEqual(['text']);
      expect(JSON.stringify(leaf.data)).not.toContain('emoji');
    },
  );
});

describe('a form sent twice', () => {
  it('is written once and answered the same', async () => {
    const { job } = await agreedJob();
    const form = await weighing(job, '6.80');
    const [first, second] = await Promise.all([
      owner.post(`/jobs/${job}/write/piece_weighed`, form),
      owner.post(`/jobs/${job}/write/piece_weighed`, form),
    ]);
    const before = await entries();
    const third = await owner.post(`/jobs/${job}/write/piece_weighed`, form);
    expect([first.status, second.status, third.status]).toEqual([303, 303, 303]);
    expect(new Set([first, second, third].map(seqIn)).size).toBe(1);
    expect(await entries()).toBe(before);
  });

  it('with another body says which entry it was written as', async () => {
    const { job } = await agreedJob();
    const form = await weighing(job, '6.80');
    const seq = seqIn(await owner.post(`/jobs/${job}/write/piece_weighed`, form));
    const again = await owner.post(`/jobs/${job}/write/piece_weighed`, { ...form, 'weight.text': '6.81' });
    expect(again.status).toBe(422);
    expect(await again.text()).toContain(`already written as entry ${seq}`);
  });
});

describe('two tabs on one job', () => {
  it('show the second what the first wrote, keep what was typed, and take it when it is sent again', async () => {
    const { job } = await agreedJob();
    const [one, two] = [await weighing(job, '6.80'), await weighing(job, '6.79')];
    const written = seqIn(await owner.post(`/jobs/${job}/write/piece_weighed`, one));
    const conflict = await owner.post(`/jobs/${job}/write/piece_weighed`, two);
    const html = await conflict.text();
    expect(conflict.status).toBe(409);
    expect(html).toContain(`/entries/${written}`);
    const kept = inputsOf(html);
    expect(kept).toMatchObject({ 'weight.text': '6.79', formKey: two.formKey });
    expect((await owner.post(`/jobs/${job}/write/piece_weighed`, { ...kept, 'weight.balance': site.shop.balance })).status).toBe(303);
  });
});

describe('a wrong PIN', () => {
  it('ten times over makes the next try wait, for that person alone', async () => {
    const waits: number[] = [];
    for (let tried = 0; tried < 10; tried++) {
      const answer = await site.nobody.post('/sign-in', { person: site.shop.owner, pin: '0000' });
      expect(answer.status).toBe(422);
      waits.push(Number(/Wait (\d+) seconds/.exec(await answer.text())?.[1] ?? 0));
      site.shop.clock.now = (site.shop.clock.now + (waits.at(-1) ?? 0) * 1000) as never;
    }
    expect(waits.slice(0, 3)).toEqual([0, 0, 30]);
    expect(waits.at(-1)).toBeGreaterThanOrEqual(64);
    expect((await site.nobody.post('/sign-in', { person: site.shop.owner, pin: PIN })).status).toBe(303);
  });

  it('while one must wait is not even tried, and a right one does not help', async () => {
    for (let tried = 0; tried < 5; tried++) await site.nobody.post('/sign-in', { person: site.shop.owner, pin: '0000' });
    expect((await site.nobody.post('/sign-in', { person: site.shop.owner, pin: PIN })).status).toBe(422);
    await site.as('bench');
  });

  it('on a form that needs one keeps the form and writes nothing', async () => {
    const { job, piece } = await agreedJob();
    await site.shop.write(line('work_finished', { job }));
    const form = {
      ...(await owner.form(`/jobs/${job}/write/piece_returned`)),
      piece,
      stones: '0',
      to: 'customer',
      shown: 'the slip',
      signed: 'signature',
    };
    const before = await entries();
    for (const pin of ['', '9999']) {
      const answer = await owner.post(`/jobs/${job}/write/piece_returned`, { ...form, pin });
      expect(answer.status).toBe(422);
      expect(inputsOf(await answer.text())).toMatchObject({ shown: 'the slip', stones: '0' });
    }
    expect(await entries()).toBe(before);
    const right = await owner.post(`/jobs/${job}/write/piece_returned`, { ...form, pin: PIN });
    expect(right.status).toBe(303);
    expect((await owner.post(`/jobs/${job}/write/piece_returned`, { ...form, pin: '' })).status).toBe(303);
    expect(await entries()).toBe(before + 1);
  });
});

describe('hand-back', () => {
  it('is stopped by a wrong count of stones, in words that say what to do', async () => {
    const { job, piece } = await agreedJob();
    await site.shop.write(line('work_finished', { job }));
    const form = {
      ...(await owner.form(`/jobs/${job}/write/piece_returned`)),
      piece,
      stones: '1',
      to: 'customer',
      shown: 'the slip',
      signed: 'signature',
      pin: PIN,
    };
    const answer = await owner.post(`/jobs/${job}/write/piece_returned`, form);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Count again');
  });
});

describe('the same routes', () => {
  it('answer JSON to whoever asks for it', async () => {
    const { job } = await agreedJob();
    expect(await owner.json(`/jobs/${job}`)).toMatchObject({ job: { title: 'Signet ring' }, entries: [{}, {}, {}] });
    expect(await owner.json('/trail')).toMatchObject({ entries: expect.any(Array) });
  });
  it('take a written entry as JSON, under the same rules', async () => {
    const { job, piece } = await agreedJob();
    const { hidden } = (await owner.json(`/jobs/${job}/write/piece_weighed`)) as { hidden: Record<string, string> };
    const said = { ...hidden, piece, state: 'finished', 'weight.balance': site.shop.balance };
    const refused = await owner.postJson(`/jobs/${job}/write/piece_weighed`, { ...said, 'weight.text': 'heavy' });
    expect([refused.status, await refused.json()]).toMatchObject([422, { problems: [{ field: 'weight.text' }] }]);
    const written = await owner.postJson(`/jobs/${job}/write/piece_weighed`, { ...said, 'weight.text': '6.80' });
    expect([written.status, await written.json()]).toMatchObject([201, { written: { size: 1 } }]);
  });
  it('check the log', async () => {
    await agreedJob();
    const answer = await owner.post('/trail/check', {});
    expect(await answer.text()).toContain('The log is whole');
  });
});

describe('a lost access.db', () => {
  it('costs sign-in and makes nobody the owner', async () => {
    const { web } = site;
    const link = await web.access.makeSetupLink();
    for (const path of [`/first-run?key=${link}`, '/first-run?key=guess']) expect((await site.nobody.get(path)).status).toBe(403);
    const posted = await site.nobody.post('/first-run', {
      key: link,
      shopName: 'Mine',
      ownerName: 'Me',
      pin: '1234',
      password: 'long enough words',
      largest: '1',
      step: '0.1',
    });
    expect(posted.status).toBe(403);
  });
});

describe('an agreement', () => {
  it('names the terms in force and no others, whatever was posted', async () => {
    const { job } = await agreedJob();
    const path = `/jobs/${job}/write/work_agreed`;
    const form = { ...(await owner.form(path)), steps: 'polish', priceKind: 'free', promise: '2099-12-08', agreedBy: 'signature' };
    const agreed = { ...form, dust: 'shop', cutMetal: 'customer', oldParts: 'customer' };
    const before = await entries();
    const refused = await owner.post(path, { ...agreed, terms: 'none of yours' });
    expect([refused.status, (await refused.text()).includes('The terms in force')]).toEqual([422, true]);
    expect(await entries()).toBe(before);
    expect((await owner.post(path, agreed)).status).toBe(303);
  });
});

describe('what a field refers to', () => {
  it.each([
    ['a tare that is not listed', 'piece_weighed', { 'weight.with': 'thread' }, 'not on the list of tares'],
    ['somebody else who explains', 'difference_explained', { what: 'weight', reason: 'swept', pin: PIN }, 'Only the one who explains it'],
  ])('(%s) must be in force, as a form and as JSON', async (_what, type, more, words) => {
    const { job } = await agreedJob();
    const other = site.people.get('bench') ?? '';
    const fields = type === 'piece_weighed' ? await weighing(job, '6.82', more) : { of: job, person: other, ...more };
    const before = await entries();
    const path = `/jobs/${job}/write/${type}`;
    for (const send of [owner.post, owner.postJson]) {
      const answer = await send(path, { ...(await owner.form(path)), ...fields });
      expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining(words)]);
    }
    expect(await entries()).toBe(before);
  });
});

describe('what is wrong in a row', () => {
  it('is named in the summary by its field, its row and its member', async () => {
    const visitor = await site.as('bench');
    const form = await visitor.form('/take-in');
    const seats = { 'settings.0.seat': 'centre', 'settings.1.seat': 'left' };
    const html = await (await visitor.post('/take-in', { ...form, ...seats })).text();
    expect(html).toMatch(/href="#f-settings-1-state">Seats, and groups of seats, 2, State: /);
    expect(html).toMatch(/href="#f-kind">What is it\?: /);
  });
});

describe('a form that saw more than there is', () => {
  it('is told to be opened again, and is no conflict with nothing', async () => {
    const { job } = await agreedJob();
    const before = await entries();
    const answer = await owner.post(`/jobs/${job}/write/piece_weighed`, await weighing(job, '6.82', { [`seen.${job}`]: '999' }));
    expect([answer.status, (await answer.text()).includes('Open it again.')]).toEqual([422, true]);
    expect(await entries()).toBe(before);
  });
});
