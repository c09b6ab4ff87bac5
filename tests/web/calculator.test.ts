// The calculator over its addresses: results checked against printed tables and worked examples; where the arithmetic itself is tested see tests/trade and tests/units.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bytesOf } from '../../src/store/keys.ts';
import { line } from '../shop.ts';
import { takeRingIn } from './job-in-house.ts';
import { openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let bench: Visitor;
beforeAll(async () => {
  site = await openSite();
  bench = await site.as('bench');
});
afterAll(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

type Json = {
  result: { rows: [string, string][]; formula: string; sources: string[]; estimate?: { massNg: number } } | null;
  problems: { field: string }[];
};
const ask = async (calculation: string, asked: Record<string, string>) =>
  (await bench.json(`/calculator/${calculation}?${new URLSearchParams(asked)}`)) as unknown as Json;
const rowsOf = async (calculation: string, asked: Record<string, string>) => {
  const { result, problems } = await ask(calculation, asked);
  expect(problems).toEqual([]);
  return new Map((result?.rows ?? []).map(([words, value]) => [words, value.replaceAll('\u00a0', ' ')]));
};
const refused = async (calculation: string, asked: Record<string, string>) =>
  (await ask(calculation, asked)).problems.map(({ field }) => field);

const half = { metal: '18K yellow', section: 'halfRound', width: '2.5', thickness: '1.5' };

describe('a calculation', () => {
  it('is a page with its form, before and after it is asked', async () => {
    const blank = await bench.get('/calculator/shank');
    expect([blank.status, (await blank.text()).includes('<form class="sheet" method="get"')]).toEqual([200, true]);
    const asked = await bench.get(`/calculator/shank?${new URLSearchParams({ ...half, system: 'uk', size: 'M', share: 'half' })}`);
    const text = await asked.text();
    expect(text).toContain('band-stock-half-round-1');
    expect(text).toContain('value="2.5"');
  });
  it('says beside the field what is wrong, as an error, and keeps what was typed', async () => {
    const answer = await bench.get(`/calculator/shank?${new URLSearchParams({ ...half, system: 'uk', size: 'QQ', share: 'whole' })}`);
    const text = await answer.text();
    expect([answer.status, text.includes('id="f-size-error"'), text.includes('value="QQ"')]).toEqual([422, true, true]);
    expect(text).toContain('Not calculated yet');
  });
  it('reads a comma as it reads a point', async () => {
    const asked = { metal: 'fine gold', section: 'rect', thickness: '1', length: '10' };
    expect(await rowsOf('stock', { ...asked, width: '2,5' })).toEqual(await rowsOf('stock', { ...asked, width: '2.5' }));
  });
  it('writes nothing', async () => {
    const count = async () => (await site.shop.store.read('SELECT COUNT(*) AS n FROM entry'))[0]?.n;
    const before = await count();
    await ask('karat', { mass: '10', from: '18', to: '14' });
    expect(await count()).toBe(before);
  });
});

describe('what it says', () => {
  it('of raising and lowering: 10 g of 18 made 14 takes 2.857 g of alloy, and back again as much fine gold as the formula says (ORK)', async () => {
    expect((await rowsOf('karat', { mass: '10', from: '18', to: '14' })).get('Add alloy')).toBe('2.857 g');
    expect((await rowsOf('karat', { mass: '10', from: '14', to: '18' })).get('Add fine gold')).toBe('6.667 g');
    expect(await refused('karat', { mass: '10', from: '14', to: '24' })).toEqual(['to']);
  });
  it('of a gauge by its system, and asks which of a bare one: 18 is 1.024 mm by AWG (ASTM B258) and 1.219 mm by SWG (BS 3737)', async () => {
    expect((await rowsOf('gauges', { gauge: '18 AWG' })).get('Thickness')).toBe('1.024 mm');
    expect((await rowsOf('gauges', { gauge: '18 SWG' })).get('Thickness')).toBe('1.219 mm');
    expect(await refused('gauges', { gauge: '18' })).toEqual(['gauge']);
  });
  it('of a weight in the units of papers: an ounce troy is 31.1035 g and 20 dwt, and an ounce alone is asked about (NIST HB 44 App. C)', async () => {
    const rows = await rowsOf('units', { amount: '1', unit: 'ozt' });
    expect([rows.get('gram'), rows.get('pennyweight, 24 grains')]).toEqual(['31.1035', '20.0000']);
    for (const word of ['oz', 'gr', 'tola', 'tael', 'pearl grain'])
      expect(await refused('units', { amount: '1', unit: word }), word).toEqual(['which']);
    expect((await rowsOf('units', { amount: '1', unit: 'tola', which: 'tola' })).get('gram')).toBe('11.6638');
    expect(await refused('units', { amount: '1', unit: 'ppt' })).toEqual(['unit']);
  });
  it('of a ring size in all five systems: UK M is 52.5 mm round inside (BS 6820), ISO 52.5, Swiss 12½', async () => {
    const rows = await rowsOf('ring-sizes', { system: 'uk', size: 'M' });
    expect([rows.get('Inside circumference'), rows.get('ISO'), rows.get('Swiss')]).toEqual(['52.50 mm', '52½', '12½']);
    expect(rows.get('US')).toMatch(/^6/);
  });
  it('of a change of two US sizes: 5.107 mm let in before kerf and filing, which the insert makes good', async () => {
    const clean = await rowsOf('size-change', { system: 'us', from: '6', to: '8', ...half });
    const real = await rowsOf('size-change', { system: 'us', from: '6', to: '8', kerf: '0.3', filed: '0.2', ...half });
    expect(clean.get('Let in')).toMatch(/^5\.11 mm/);
    expect(real.get('Let in')).toMatch(/^5\.61 mm/);
    expect((await rowsOf('size-change', { system: 'us', from: '8', to: '6', ...half })).get('Cut out')).toMatch(/^5\.11 mm/);
  });
  it('of a round brilliant of 6.5 × 3.9 mm: 1.005 ct by 0.0061 d² h, ± 5 % in the open and 15 % in its setting (GGR, MGC)', async () => {
    const asked = { formula: 'diamond-round-1', length: '6.5', width: '6.5', depth: '3.9' };
    expect((await rowsOf('stone', { ...asked, access: 'open' })).get('It should weigh')).toBe('1.005 ct ± 0.050 ct');
    expect((await rowsOf('stone', { ...asked, access: 'obstructed' })).get('It should weigh')).toBe('1.005 ct ± 0.151 ct');
    expect(await refused('stone', { ...asked, formula: 'coloured-round-1', access: 'open' })).toEqual(['gem']);
  });
  it('of half a micrometre of rhodium on 6 cm²: 3.7 mg, at 1.241 mg/cm² for each micrometre', async () => {
    expect((await rowsOf('plating', { coat: 'rhodium', thick: '0.5', area: '6' })).get('The coat weighs')).toMatch(/^3\.7 mg/);
    expect(await refused('plating', { coat: 'rhodium', thick: '0.5' })).toEqual(['area']);
  });
  it('of the same volume in 18 carat for 14: ρ₂ over ρ₁, 15.58 over 13.07 (STG)', async () => {
    expect((await rowsOf('metal-swap', { mass: '5', from: '14K yellow', to: '18K yellow' })).get('It would weigh')).toMatch(/^5\.960 g/);
  });
});

describe('an estimate in an entry', () => {
  it('goes into the weight of the entry that was chosen, with its formula, and is written as an estimate', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const lot = site.shop.newRef('lot');
    await site.shop.write(line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }));
    const to = await bench.get(
      `/calculator/use?${new URLSearchParams({ job, type: 'metal_cut', text: '0.412', unit: 'g', formula: 'sizing-stock-half-round-1' })}`,
    );
    expect(to.status).toBe(303);
    const path = to.headers.get('location') ?? '';
    const form = await bench.form(path);
    expect(form).toMatchObject({ 'weight.basis': 'estimate', 'weight.text': '0.412', 'weight.formula': 'sizing-stock-half-round-1' });
    const answer = await bench.post(path.split('?')[0] ?? '', { ...form, piece, metal: 'gold-750', lot });
    expect(answer.status).toBe(303);
    const [row] = await site.shop.store.read("SELECT leaf FROM entry WHERE type = 'metal_cut'");
    const leaf = JSON.parse(new TextDecoder().decode(bytesOf(row?.leaf)));
    expect(leaf.data.weight).toEqual({
      text: '0.412',
      unit: 'g',
      ng: 412_000_000,
      basis: 'estimate',
      formula: 'sizing-stock-half-round-1',
    });
  });
  it('goes into no other entry', async () => {
    expect((await bench.get('/calculator/use?job=x&type=piece_returned&text=1')).status).toBe(404);
  });
});
