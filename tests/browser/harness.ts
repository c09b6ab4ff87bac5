// A whole shop for walks: the program built and started as a process of its own on a free port, and a real browser in front of it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Locator, type Page, type Response } from 'playwright-core';
import { serving } from '../program.ts';
import { browserProgram } from './chromium.ts';

export const PIN = '4471';
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface House {
  readonly url: string;
  /** The data directory. */
  readonly dir: string;
  /** A signed-in person before a screen of their own. */
  visit(screen?: Screen): Promise<Visit>;
  close(): Promise<void>;
}
export interface Screen {
  readonly scripts?: boolean;
  readonly width?: number;
  readonly dark?: boolean;
}
export interface Visit {
  readonly page: Page;
  /** Taps and typed fields so far. */
  readonly counted: { taps: number; typed: number };
  open(path: string): Promise<void>;
  /** One tap: a button, a link, a chip or a tick by the words on it; within `within` where words come twice. */
  tap(words: string, within?: Locator): Promise<void>;
  /** One typed field, by its label. */
  type(label: string, text: string): Promise<void>;
  /** A field typed and sent with the Enter key. */
  enter(label: string, text: string): Promise<void>;
  /** The page's heading, once the answer to what was sent is there. */
  heading(words: string | RegExp): Promise<void>;
  /** No violation found by axe (which itself needs scripts), no sideways scroll, nothing on the console. Throws with what was found. */
  check(): Promise<void>;
  close(): Promise<void>;
}

/** Starts and begins a shop with one owner and one balance of 0.01 g; `words` are those of the country. */
export async function openHouse({ country = 'GB' }: { readonly country?: 'GB' | 'US' } = {}): Promise<House> {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-house-'));
  const { url, child, ended, said } = await serving({ dir });
  const browser = await chromium.launch({ ...(await browserProgram()), args: ARGUMENTS });
  const close = async () => {
    await browser.close();
    child.kill('SIGTERM');
    await ended;
    rmSync(dir, { recursive: true, force: true });
  };
  try {
    await firstRun(browser, /http:\S+\/first-run\?key=\S+/.exec(said())?.[0] ?? '', country);
  } catch (error) {
    await close();
    throw error;
  }
  return { url, dir, visit: (screen) => visit(browser, url, screen), close };
}

async function firstRun(browser: Browser, link: string, country: 'GB' | 'US'): Promise<void> {
  const page = await browser.newPage();
  await page.goto(link);
  const said = {
    shopName: 'Wren & Daughter',
    ownerName: 'Ada Wren',
    pin: PIN,
    password: 'four words will do',
    largest: '400',
    step: '0.01',
  };
  for (const [name, text] of Object.entries(said)) await page.fill(`[name="${name}"]`, text);
  await page.fill('[name="zone"]', country === 'US' ? 'America/New_York' : 'Europe/London');
  await page.check(`[name="country"][value="${country}"]`, { force: true });
  await page.selectOption('[name="currency"]', country === 'US' ? 'USD' : 'GBP');
  await page.click('main form button');
  await page.waitForURL('**/setup/recovery-sheet');
  await page.context().close();
}

async function visit(browser: Browser, url: string, { scripts = true, width = 390, dark = false }: Screen = {}): Promise<Visit> {
  const context = await browser.newContext({
    javaScriptEnabled: scripts,
    viewport: { width, height: 844 },
    colorScheme: dark ? 'dark' : 'light',
    hasTouch: width < 800,
    baseURL: url,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  const heard: string[] = [];
  page.on('pageerror', (error) => heard.push(String(error)));
  page.on('console', (message) => {
    const isAnswer = /the server responded with a status of 4(09|22)/.test(message.text());
    if (message.type() === 'error' && !isAnswer) heard.push(message.text());
  });
  const counted = { taps: 0, typed: 0 };
  await page.goto('/sign-in');
  await page.fill('#f-pin', PIN);
  await page.click('main form button');
  await page.waitForURL((at) => at.pathname === '/');
  return {
    page,
    counted,
    async open(path) {
      // What was sent a moment ago may still be leading elsewhere: it gives the opening up, or the opening it.
      await page.goto(path).catch((error: unknown) => (/ERR_ABORTED/.test(String(error)) ? page.goto(path) : Promise.reject(error)));
    },
    async tap(words, within) {
      counted.taps++;
      await target(within ?? page.locator('body'), words).click();
      await page.waitForLoadState();
    },
    async type(label, text) {
      counted.typed++;
      await field(page, label).fill(text);
    },
    async enter(label, text) {
      counted.typed++;
      await field(page, label).fill(text);
      await field(page, label).press('Enter');
    },
    heading: (words) => page.getByRole('heading', { level: 1, name: words }).waitFor(),
    async check() {
      const { violations } = scripts ? await new AxeBuilder({ page }).analyze() : { violations: [] };
      const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
      const over = await page.evaluate<number>('document.documentElement.scrollWidth - document.documentElement.clientWidth');
      if (over > 0) found.push(`the page is ${over} px too wide at ${width} px`);
      found.push(...heard);
      if (found.length > 0) throw new Error(`${page.url()}\n${found.join('\n')}`);
    },
    close: () => context.close(),
  };
}

/** Waits until the page that an answer sends one to has been drawn: a page opened before that would be given up for it. */
export async function landed(page: Page, answer: Response): Promise<void> {
  const { 'hx-redirect': there, location } = answer.headers();
  const to = there ?? location;
  if (to !== undefined) await page.waitForURL(new URL(to, page.url()).href);
}

/** An input by the words of its label; what stands after them in small print ("if any") is not part of them. */
const field = (page: Page, label: string): Locator => page.getByLabel(new RegExp(`^${escaped(label)}( if any)?$`)).first();
const escaped = (words: string) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** What a person would touch: a button or link by its name, else the label of a chip or tick. */
function target(within: Locator, words: string): Locator {
  const button = within.getByRole('button', { name: words, exact: true });
  const link = within.getByRole('link', { name: words, exact: true });
  const label = within.locator('label', { hasText: new RegExp(`^\\s*${escaped(words)}\\s*$`) });
  return button.or(link).or(label).first();
}
