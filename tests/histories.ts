// Whole-shop histories for property tests: steps drawn at random, each turned into a command that fits the ledger as it stands.
import fc from 'fast-check';
import type { Decided } from '../src/ledger/decide.ts';
import type { Command, Kept, Line } from '../src/ledger/leaf.ts';
import { entryType } from '../src/ledger/registry.ts';
import type { Thing } from '../src/ledger/thing.ts';
import type { RefKind } from '../src/units/ids.ts';
import type { Reading } from '../src/weighing/reading.ts';
import { type Look, type MemoryLedger, memoryLedger, type Names, weighing } from './memory-ledger.ts';
import { line } from './shop.ts';

export interface Step {
  readonly kind: keyof typeof STEPS;
  /** Three numbers that choose among what there is. */
  readonly pick: readonly [number, number, number];
  readonly weighed: boolean;
}

interface Turn extends Step {
  readonly look: Look;
  readonly names: Names;
  of(kind: RefKind, which?: (thing: Thing) => boolean): Thing | undefined;
  /** A weight field, or nothing when the step is not weighed. */
  maybe(unit: 'g' | 'ct', steps: number): { readonly weight?: Reading };
}
type Told = readonly Line[];
const here = (thing: Thing) => !thing.gone;
const jobOf = ({ look }: Turn, thing: Thing | undefined) => look.things.find(({ id }) => id === thing?.stream);
const workable = (turn: Turn) => turn.of('piece', (piece) => here(piece) && jobOf(turn, piece)?.status === 'agreed');
const inJob = (turn: Turn, kind: 'stone' | 'packet', piece: Thing, which: (thing: Thing) => boolean = here) =>
  turn.of(kind, (thing) => thing.stream === piece.stream && which(thing));

/** Each kind of step: the lines it comes to, or none where nothing fits. */
const STEPS = {
  open(turn: Turn): Told {
    const { names, pick, weighed } = turn;
    const [customer, job] = [names.ref('customer'), names.ref('job')];
    const pieces = Array.from({ length: 1 + (pick[1] % 2) }, (_, index) =>
      line('piece_received', {
        ...{ job, piece: names.ref('piece'), kind: 'ring', description: names.text(), stones: (pick[0] + index) % 6 },
        parts: [{ part: 'shank', metal: 'gold-750' }],
        ...turn.maybe('g', 300 + (pick[2] % 900)),
      }),
    );
    const agreed = line('work_agreed', {
      ...{ job, steps: ['re-tip'], details: names.text(), priceKind: 'free', promise: '2027-02-01', dust: 'shop' },
      ...{ cutMetal: 'customer', oldParts: 'customer', terms: '2026-1', agreedBy: 'signature' },
    });
    const known = weighed ? [line('customer_met', { customer, name: names.text(), phone: names.text() })] : [];
    const opened = { job, bag: names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter', theirDocket: names.text() };
    return [...known, line('job_opened', weighed ? { ...opened, customer } : opened), ...pieces, agreed];
  },
  lot: ({ names }: Turn): Told => [line('lot_opened', { lot: names.ref('lot'), name: names.text(), metal: 'gold-750' })],
  stock({ names, of, pick }: Turn): Told {
    const known = pick[0] % 2 === 0 ? of('stock') : undefined;
    const named = known ? { stock: known.id } : { stock: names.ref('stock'), name: names.text() };
    return [line('metal_received', { ...named, metal: 'gold-750', weight: weighing(names, 'g', 1000 + (pick[1] % 5000)) })];
  },
  unset(turn: Turn): Told {
    const piece = workable(turn);
    if (!piece?.stones) return [];
    const { names, pick } = turn;
    const back = inJob(turn, 'stone', piece, (stone) => here(stone) && !stone.stones);
    const one = { stone: (pick[1] % 2 === 0 && back?.id) || names.ref('stone'), stones: 1 };
    const group = { packet: inJob(turn, 'packet', piece)?.id ?? names.ref('packet'), stones: 1 + (pick[1] % piece.stones) };
    const taken = pick[2] % 2 === 0 ? one : group;
    return [line('stone_unset', { piece: piece.id, ...taken, condition: 'sound', ...turn.maybe('ct', 100 + (pick[1] % 900)) })];
  },
  set(turn: Turn): Told {
    const piece = workable(turn);
    const stone = piece && inJob(turn, 'stone', piece, (one) => here(one) && one.stones === 1);
    const packet = piece && inJob(turn, 'packet', piece, (one) => here(one) && (one.stones ?? 0) > 0);
    if (!piece) return [];
    if (stone && (turn.pick[1] % 2 === 0 || !packet)) return [line('stone_set', { piece: piece.id, stone: stone.id, stones: 1 })];
    const held = packet?.stones ?? 0;
    if (!packet || held === 0) return [];
    const left = turn.pick[2] % held;
    return [
      line('stone_set', { piece: piece.id, packet: packet.id, stones: held - left, ...(left ? { left, ...turn.maybe('ct', 50) } : {}) }),
    ];
  },
  supply(turn: Turn): Told {
    const piece = workable(turn);
    if (!piece) return [];
    const said = { piece: piece.id, stone: turn.names.ref('stone'), species: 'diamond', origin: 'lab', whose: 'customer' };
    return [line('stone_supplied', { ...said, treatment: turn.names.text(), ...turn.maybe('ct', 100 + (turn.pick[0] % 900)) })];
  },
  cut(turn: Turn): Told {
    const piece = workable(turn);
    const lot = turn.of('lot', (one) => one.status === 'open');
    if (!piece) return [];
    const into = lot && turn.pick[1] % 3 > 0 ? { lot: lot.id } : { packet: inJob(turn, 'packet', piece)?.id ?? turn.names.ref('packet') };
    return [
      line('metal_cut', {
        piece: piece.id,
        ...into,
        metal: 'gold-750',
        part: turn.names.text(),
        ...turn.maybe('g', 1 + (turn.pick[2] % 200)),
      }),
    ];
  },
  add(turn: Turn): Told {
    const piece = workable(turn);
    const from = turn.of('stock') ?? (piece && inJob(turn, 'packet', piece));
    if (!piece || !from) return [];
    return [
      line('metal_added', {
        piece: piece.id,
        [from.kind]: from.id,
        metal: 'gold-750',
        what: 'shank',
        ...turn.maybe('g', 1 + (turn.pick[2] % 200)),
      }),
    ];
  },
  gather({ names, of, pick }: Turn): Told {
    const skin = pick[0] % 2 === 0 ? of('skin') : undefined;
    const named = skin ? { skin: skin.id } : { skin: names.ref('skin'), bench: names.text(), metal: 'gold-750' };
    return [line('lemel_gathered', { ...named, weight: weighing(names, 'g', 1 + (pick[1] % 300)) })];
  },
  empty({ names, of, pick }: Turn): Told {
    const [skin, lot] = [of('skin'), of('lot', (one) => one.status === 'open')];
    if (!skin || !lot) return [];
    return [line('skin_emptied', { skin: skin.id, lot: lot.id, metal: 'gold-750', weight: weighing(names, 'g', 1 + (pick[1] % 300)) })];
  },
  weigh(turn: Turn): Told {
    const piece = turn.of('piece', here);
    const weight = weighing(turn.names, 'g', 300 + (turn.pick[1] % 900));
    return piece ? [line('piece_weighed', { piece: piece.id, state: 'as received', weight })] : [];
  },
  note(turn: Turn): Told {
    const job = turn.of('job', ({ status }) => status !== 'withdrawn');
    const other = turn.look.things.find(({ kind, id, status }) => kind === 'job' && id !== job?.id && status !== 'withdrawn');
    const about = turn.pick[1] % 3 === 0 ? [job, other] : [job];
    return about.flatMap((one) => (one ? [line('note_added', { about: one.id, text: turn.names.text() })] : []));
  },
  hand(turn: Turn): Told {
    const of = turn.of('piece', here) ?? turn.of('job', ({ status }) => status === 'agreed');
    return of ? [line('taken', { of: of.id })] : [];
  },
  correct(turn: Turn): Told {
    const fitting = turn.look.leaves.flatMap((kept) => (correctionOf(turn, kept) ? [kept] : []));
    const kept = fitting[turn.pick[0] % Math.max(1, fitting.length)];
    return (kept && correctionOf(turn, kept)) ?? [];
  },
  back(turn: Turn): Told {
    const piece = turn.of('piece', here);
    const job = jobOf(turn, piece);
    if (!piece || !job) return [];
    const finished = job.status === 'agreed' ? [line('work_finished', { job: job.id })] : [];
    const counted = { piece: piece.id, to: 'customer', shown: turn.names.text(), ...turn.maybe('g', 300 + (turn.pick[1] % 900)) };
    if (job.stonesOut === 0) return [...finished, line('piece_returned', { ...counted, stones: piece.stones ?? 0, signed: 'signature' })];
    const exception = { stones: turn.pick[2] % 4, exception: turn.names.text(), signed: true };
    return turn.pick[1] % 4 === 0 ? [line('returned_with_exception', { ...counted, ...exception })] : [];
  },
} as const satisfies Readonly<Record<string, (turn: Turn) => Told>>;

/** A correction of a field of that entry, if one of the fields it has can be corrected by drawing anew. */
function correctionOf({ look, names, pick, weighed }: Turn, { leaf, hash, seq }: Kept): Told | null {
  if (look.leaves.some((later) => later.leaf.data.target === hash)) return null;
  const [field, said] =
    Object.entries(entryType(leaf.type).fields).find(
      ([name, { correctable }]) => correctable && REDRAWN.has(name) && leaf.data[name] !== undefined,
    ) ?? [];
  if (field === undefined || !said) return null;
  const was = leaf.data[field];
  const drawn = { weight: weighing(names, (was as Partial<Reading>).unit === 'ct' ? 'ct' : 'g', 1 + (pick[1] % 400)), stones: pick[1] % 7 };
  const is = field === 'weight' ? drawn.weight : field === 'stones' ? drawn.stones : names.text();
  const withdrawn = said.mayBeMissing && weighed;
  return [line('corrected', { target: hash, seq, field, was, ...(withdrawn ? {} : { is }), reason: 'as drawn' })];
}
const REDRAWN: ReadonlySet<string> = new Set(['weight', 'stones', 'description', 'treatment', 'part']);

/** The lines a step comes to in the ledger as it stands. */
export function linesOf(step: Step, look: Look, names: Names): Told {
  const of: Turn['of'] = (kind, which = () => true) => {
    const fitting = look.things.filter((thing) => thing.kind === kind && which(thing));
    return fitting[step.pick[0] % Math.max(1, fitting.length)];
  };
  const maybe: Turn['maybe'] = (unit, steps) => (step.weighed ? { weight: weighing(names, unit, steps) } : {});
  return STEPS[step.kind]({ ...step, look, names, of, maybe });
}

const KINDS = Object.keys(STEPS) as Step['kind'][];
const number = fc.nat(1_000_000);

/** Histories of up to `maxLength` steps; `without` leaves kinds of step out. */
export const histories = (maxLength: number, without: readonly Step['kind'][] = []): fc.Arbitrary<readonly Step[]> =>
  fc.array(
    fc.record({
      kind: fc.oneof(
        { weight: 1, arbitrary: fc.constant('open' as const) },
        { weight: 9, arbitrary: fc.constantFrom(...KINDS.filter((kind) => !without.includes(kind))) },
      ),
      pick: fc.tuple(number, number, number),
      weighed: fc.boolean(),
    }),
    { minLength: Math.min(10, maxLength), maxLength, size: 'max' },
  );

/** Plays a history in memory; `after` sees the ledger after each command, and what became of it. */
export async function played(
  history: readonly Step[],
  after: (ledger: MemoryLedger, command: Command, decided: Decided) => void | Promise<void> = () => undefined,
): Promise<MemoryLedger> {
  const ledger = await memoryLedger();
  for (const step of history) {
    const lines = linesOf(step, ledger.look(), ledger.names);
    if (lines.length === 0) continue;
    const command = ledger.command(lines);
    await after(ledger, command, await ledger.tell(command));
  }
  return ledger;
}
