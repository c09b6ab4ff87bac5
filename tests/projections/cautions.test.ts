// Cautions that the ledger calls for: stones against the steps of the bench, and additions to marked pieces. Sources stand with the tables in src/trade.
import { describe, expect, it } from 'vitest';
import { type Fact, fact, flow } from '../../src/book/facts.ts';
import { newThing, type Thing } from '../../src/ledger/thing.ts';
import { additionCaution, careStepsOf, isMarked, stoneCautions } from '../../src/projections/cautions.ts';
import type { Ref } from '../../src/units/ids.ts';
import { formatMass, massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';

const thing = (kind: 'piece' | 'stone' | 'stock', id: string, says: Record<string, string>): Thing => ({
  ...newThing(id, kind, 'job', 0),
  says,
});
const seat = (says: Record<string, string>): Thing =>
  thing('stone', JSON.stringify(says), { seat: 'centre', state: 'sound', backing: 'open', ...says });
const grams = (text: string): Reading => {
  const parsed = parseMass(text, 'g');
  if ('problem' in parsed) throw new Error(parsed.problem);
  return { text, unit: 'g', ng: parsed.ng, basis: 'weighed' };
};
const RING = 'ring' as Ref<'piece'>;
const cameIn = (text: string): Fact => fact('reading', { of: RING, state: 'as received', reading: grams(text) });
const add = (metal: string, text: string): Fact => flow('stock' as Ref<'stock'>, RING, { kind: 'metal', metal }, grams(text));
const ring = (says: Record<string, string> = {}): Thing => thing('piece', RING, { metal: 'gold-750', 'mark fineness': '750', ...says });

describe('stones noted in a job', () => {
  it('say nothing of a clean diamond in the ultrasonic, and care under the flame', () => {
    const diamond = seat({ species: 'diamond', cut: 'round' });
    expect(stoneCautions([diamond], ['ultrasonic', 'pickle'])).toEqual([]);
    expect(stoneCautions([diamond], ['torch'])).toHaveLength(1);
  });
  it('that nobody has named come out, and behind foil are neither heated nor wetted', () => {
    const [open] = stoneCautions([seat({ species: 'unknown' })], ['torch']);
    const [foiled] = stoneCautions([seat({ species: 'unknown', backing: 'foiled' })], ['torch', 'ultrasonic']);
    expect(open).toContain('take it out');
    expect(foiled).toContain('no heat, no water, or decline');
  });
  it('are as the species whatever the cut, but where the cut itself is what breaks', () => {
    const round = stoneCautions([seat({ species: 'diamond', cut: 'round' })], ['hammerSetting']);
    const pear = stoneCautions([seat({ species: 'diamond', cut: 'pear' })], ['hammerSetting']);
    expect([round.length, pear.length]).toEqual([0, 1]);
  });
  it('are silent once they are out of their seats', () => {
    expect(stoneCautions([{ ...seat({ species: 'emerald' }), stones: 1 }], ['ultrasonic'])).toEqual([]);
    expect(stoneCautions([seat({ species: 'emerald' })], ['ultrasonic'])).toHaveLength(1);
  });
  it('are said once for stones that are alike', () => {
    expect(stoneCautions([seat({ species: 'opal' }), seat({ species: 'opal' })], ['torch'])).toHaveLength(1);
  });
});

describe('agreed work', () => {
  it('asks the steps it takes, and a laser where joints are lasered', () => {
    expect(careStepsOf(['size-up', 'polish'])).toEqual(['torch', 'pickle', 'ultrasonic']);
    expect(careStepsOf(['size-up', 'laser'])).toEqual(['pickle', 'laser']);
    expect(careStepsOf(['laser', 'solder'])).toEqual(['torch', 'pickle', 'laser']);
    expect(careStepsOf(['engrave'])).toEqual([]);
  });
});

describe('metal added to a marked piece', () => {
  const said = (piece: Thing, facts: readonly Fact[], work: readonly string[] = []) => additionCaution(piece, work, facts);
  it('is let through for a sizing, and cautioned within a tenth of one gram of gold (Hallmarking Act 1973 s5(4), text of 2007)', () => {
    expect(said(ring(), [cameIn('6.82'), add('gold-750', '0.30')])).toBeNull();
    expect(said(ring(), [cameIn('6.82'), add('gold-750', '0.89')])).toBeNull();
    expect(said(ring(), [cameIn('6.82'), add('gold-750', '0.90')])).toContain(formatMass(massNg(1_000_000_000), 'g', 2));
  });
  it('is held to half the weight before, where that is less than the grams', () => {
    expect(said(ring(), [cameIn('1.20'), add('gold-750', '0.60')])).toContain('0.60');
    expect(said(ring(), [cameIn('1.20'), add('gold-750', '0.50')])).toBeNull();
  });
  it('is summed over the job', () => {
    expect(said(ring(), [cameIn('6.82'), add('gold-750', '0.50'), add('gold-750', '0.60')])).toContain('1.10');
  });
  it('of a lower standard or another metal is cautioned at any weight', () => {
    expect(said(ring(), [cameIn('6.82'), add('gold-375', '0.05')])).not.toBeNull();
    expect(said(ring(), [cameIn('6.82'), add('platinum-950', '0.05')])).not.toBeNull();
    expect(said(ring(), [cameIn('6.82'), add('gold-916', '0.05')])).toBeNull();
  });
  it('is cautioned where the piece becomes another', () => {
    expect(said(ring(), [cameIn('6.82'), add('gold-750', '0.05')], ['remodel'])).not.toBeNull();
  });
  it('reads the standard from the mark where the metal alone was noted', () => {
    expect(said(ring({ metal: 'gold-unknown', 'mark fineness': '18ct' }), [cameIn('6.82'), add('gold-375', '0.05')])).not.toBeNull();
  });
  it('counts what is about to be written', () => {
    const facts = [cameIn('6.82'), add('gold-750', '0.50')];
    expect(additionCaution(ring(), [], facts, { metal: 'gold-750', ng: massNg(600_000_000) })).toContain('with this');
  });
  it('says nothing of a piece without a mark, or with a plater’s', () => {
    const { 'mark fineness': _, ...unmarked } = ring().says;
    expect(said({ ...ring(), says: unmarked }, [cameIn('6.82'), add('gold-750', '3.00')])).toBeNull();
    expect(isMarked(ring({ 'mark fineness': '18K GP' }))).toBe(false);
  });
});
