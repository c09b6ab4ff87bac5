// What every resource of the web part is given, and what a request carries once it is known who asks.
import type { Context, Hono } from 'hono';
import type { Shop } from '../../book/codec.ts';
import type { StaffRole } from '../../book/facts.ts';
import { type Baselines, baselinesIn } from '../../book/loss-charts.ts';
import type { Thing } from '../../ledger/thing.ts';
import { type FewKind, thingsOfKind } from '../../queries/things.ts';
import type { Access, Session } from '../../store/access.ts';
import type { Directory } from '../../store/names.ts';
import type { Store } from '../../store/open.ts';
import type { Instant } from '../../units/dates.ts';
import type { Ref } from '../../units/ids.ts';
import type { Currency } from '../../units/money.ts';
import type { BalanceParameters } from '../../weighing/balance.ts';
import { parametersOf } from '../../weighing/worth.ts';
import type { Noted } from './noted.ts';

export interface Web {
  readonly store: Store;
  readonly access: Access;
  readonly directory: Directory;
  readonly clock: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
  /** Where this server is reached: "http://127.0.0.1:8417". Never taken from a request. */
  readonly baseUrl: string;
  /** Folder of style sheets, fonts and scripts. */
  readonly assetsDir: string;
  /** Folder of stored photographs. */
  readonly photosDir: string;
  /** Notes in the program's log who came in and who was kept out. */
  readonly note: (noted: Noted) => void;
}
export interface Person {
  readonly id: Ref<'person'>;
  readonly name: string;
  readonly role: StaffRole;
}
export interface Policy extends Shop {
  readonly shop: Ref<'shop'>;
  readonly name: string;
  readonly country: string;
  readonly alone: boolean;
  readonly words: 'uk' | 'us';
  /** Screens in use on the shop's network, by their keys. */
  readonly screens: ReadonlySet<string>;
  /** Address, phone and email as papers say them, a line each. */
  readonly reach: readonly string[];
  /** The name of the terms in force; null where none were set. */
  readonly terms: string | null;
  /** Every text of terms that was ever in force, by its name. */
  readonly termsTexts: ReadonlyMap<string, string>;
  /** Baselines of loss that the owner has accepted. */
  readonly baselines: Baselines;
  readonly balanceNames: ReadonlyMap<string, string>;
  readonly parameters: ReadonlyMap<string, BalanceParameters>;
}
export interface Env {
  Variables: {
    readonly person: Person | null;
    readonly session: (Session & { readonly token: string }) | null;
    readonly policy: Policy | null;
    /** The screen that asks: the one PC, or an enrolled one; null where it is not enrolled. */
    readonly device: string | null;
    /** How many forms the person began and has not written. */
    readonly drafts: number;
    /** Why nothing is written, or soon will not be, and what must be looked at, in sentences. */
    readonly standing: () => Promise<readonly string[]>;
  };
}
export type App = Hono<Env>;
export type Ctx = Context<Env>;

/** One sub-app per resource. */
export type Resource = (web: Web) => App;

/** All things of a kind of which a shop has few, newest last. */
export const thingsOf = ({ store }: Web, kind: FewKind): Promise<readonly Thing[]> => thingsOfKind(store, kind);

/** How the shop works, from the ledger; null before it has begun. */
export async function policyOf(web: Web): Promise<Policy | null> {
  const [shop] = await thingsOf(web, 'shop');
  if (!shop) return null;
  const balances = (await thingsOf(web, 'balance')).filter((one) => one.balance !== undefined);
  const tares = Object.entries(shop.says).filter(([name]) => name.startsWith('tare:'));
  return {
    shop: shop.id as Ref<'shop'>,
    name: shop.says.name ?? '',
    zone: shop.says.zone ?? 'UTC',
    country: shop.says.country ?? 'other',
    currency: (shop.says.currency ?? 'GBP') as Currency,
    alone: shop.says.staffing !== 'two',
    words: shop.says.words === 'us' ? 'us' : 'uk',
    screens: new Set(
      Object.entries(shop.says).flatMap(([name, says]) => (name.startsWith('device:') && says !== '' ? [name.slice(7)] : [])),
    ),
    reach: [shop.says.address, shop.says.phone, shop.says.email].flatMap((said) => (said === undefined ? [] : said.split('\n'))),
    terms: shop.says.terms ?? null,
    termsTexts: new Map(
      Object.entries(shop.says).flatMap(([name, says]) => (name.startsWith('terms:') ? [[name.slice(6), says] as const] : [])),
    ),
    baselines: baselinesIn(shop.says),
    balances: new Map(balances.flatMap(({ id, balance }) => (balance ? [[id, balance] as const] : []))),
    parameters: new Map(balances.flatMap(({ id, balance, says }) => (balance ? [[id, parametersOf(id, balance, says)] as const] : []))),
    balanceNames: new Map(balances.map(({ id, says }) => [id, says.name ?? id])),
    tares: new Map(tares.map(([name, ng]) => [name.slice(5), Number(ng) as never])),
  };
}

/** The person who asks; a route that reaches this without one is a bug of the route table. */
export function whoAsks(c: Ctx): Person {
  const person = c.get('person');
  if (!person) throw new Error(`${c.req.path} is served without a person`);
  return person;
}

/** The shop's policy; a route that reaches this before the ledger has begun is a bug of the route table. */
export function policyFor(c: Ctx): Policy {
  const policy = c.get('policy');
  if (!policy) throw new Error(`${c.req.path} is served before the ledger has begun`);
  return policy;
}

/** Whoever works here writes; an auditor reads. */
export const mayWrite = ({ role }: Person): boolean => role !== 'auditor';
