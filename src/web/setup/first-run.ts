// First run: the one-time link makes the shop and its owner, with a first balance, in one command. "No owner yet" is read from the ledger.
import { Hono } from 'hono';
import { ulid } from 'ulid';
import { FirstRun } from '../../../views/first-run.tsx';
import { type Problem, plainText } from '../../book/codec.ts';
import { firstTerms } from '../../book/terms.ts';
import type { Line } from '../../ledger/leaf.ts';
import type { Ref } from '../../units/ids.ts';
import { newRef } from '../form/form.ts';
import { goTo, holdsSecret, respond } from '../form/negotiate.ts';
import { first, readPosted } from '../form/posted.ts';
import type { Ctx, Env, Resource, Web } from '../session/context.ts';
import { begin } from '../session/sign-in.ts';
import { trouble } from '../session/trouble.ts';
import { enrolFirst } from './devices.ts';
import { termsLine } from './terms.ts';

export const firstRun: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/first-run', async (c) =>
    (await mayBegin(web, c, c.req.query('key') ?? '')) ? page(c, new Map(), c.req.query('key') ?? '') : closed(web, c),
  );
  app.post('/first-run', async (c) => {
    const { posted } = await readPosted(c);
    const key = first(posted, 'key');
    if (!(await mayBegin(web, c, key))) return closed(web, c);
    const said = Object.fromEntries([...posted].map(([name, [value]]) => [name, plainText(value ?? '')]));
    const problems = problemsOf(said);
    if (problems.length > 0) return page(c, posted, key, problems);
    const owner = newRef(web, 'person') as Ref<'person'>;
    const command = {
      id: ulid(web.clock()).toLowerCase(),
      by: owner,
      auth: 'password',
      device: 'first-run',
      seen: {},
      lines: linesOf(web, owner, said),
    } as const;
    const answer = await web.store.record(command);
    if (answer.answer !== 'written') {
      const field = answer.answer === 'refused' ? (answer.field?.startsWith('ranges') ? 'step' : (answer.field ?? '')) : '';
      return page(c, posted, key, [{ field, say: 'say' in answer ? answer.say : 'Open the link again.' }]);
    }
    await web.access.setCredential(owner, 'pin', said.pin ?? '');
    await web.access.setCredential(owner, 'password', said.password ?? '');
    await web.access.useSetupLinks();
    await enrolFirst(web, c, owner);
    await begin(web, c, owner);
    return goTo(c, '/setup/recovery-sheet');
  });
  return app;
};

/** The link is good, asked for on this machine, and the ledger has no owner. */
async function mayBegin(web: Web, c: Ctx, key: string): Promise<boolean> {
  return c.get('policy') === null && (await web.access.checkSetupLink(key));
}

function problemsOf(said: Readonly<Record<string, string>>): readonly Problem[] {
  const problems: Problem[] = [];
  const need = (field: string, ok: boolean, say: string) => (ok ? undefined : problems.push({ field, say }));
  need('shopName', Boolean(said.shopName), 'Write the name over the door.');
  need('ownerName', Boolean(said.ownerName), 'Write your name.');
  need('pin', /^\d{4,8}$/.test(said.pin ?? ''), 'Choose a PIN of 4 to 8 figures.');
  need('password', (said.password ?? '').length >= 10, 'Choose a password of at least 10 characters. Four words will do.');
  need('largest', /^\d+([.,]\d+)?$/.test(said.largest ?? ''), 'Give the largest load on the balance’s plate, for example 400.');
  need('step', /^\d+([.,]\d+)?$/.test(said.step ?? ''), 'Give the step the balance shows, for example 0.01.');
  return problems;
}

function linesOf(web: Web, owner: Ref<'person'>, said: Readonly<Record<string, string>>): readonly Line[] {
  const shop = newRef(web, 'shop');
  const { shopName, ownerName, zone, country, currency, staffing } = said;
  const number = (text: string | undefined) => (text ?? '').replace(',', '.');
  const words = country === 'US' ? 'us' : 'uk';
  const balance = {
    name: said.balanceName || 'Bench balance',
    class: 'none',
    unit: 'g',
    ranges: [{ max: number(said.largest), step: number(said.step) }],
  };
  return [
    { type: 'ledger_started', data: { shop, owner, shopName, ownerName } },
    { type: 'policy_set', data: { shop, zone, country, currency, staffing, words } },
    ...(said.address || said.phone
      ? [
          {
            type: 'shop_described',
            data: { shop, ...(said.address ? { address: said.address } : {}), ...(said.phone ? { phone: said.phone } : {}) },
          },
        ]
      : []),
    termsLine(shop, firstTerms(country ?? '')),
    { type: 'place_named', data: { place: newRef(web, 'place'), name: 'Safe', kind: 'safe' } },
    { type: 'balance_put_in_service', data: { balance: newRef(web, 'balance'), ...balance } },
  ];
}

function closed(web: Web, c: Ctx): Promise<Response> {
  web.note({ happened: 'link_refused' });
  return trouble(c, 403, 'This link has been used, has expired, or is not for this ledger. Start the program again for a new one.');
}

function page(c: Ctx, typed: ReadonlyMap<string, readonly string[]>, key: string, problems: readonly Problem[] = []): Promise<Response> {
  holdsSecret(c);
  return respond(c, {
    title: 'Start the ledger',
    status: problems.length > 0 ? 422 : 200,
    json: { problems },
    body: FirstRun({ typed, key, problems }),
  });
}
