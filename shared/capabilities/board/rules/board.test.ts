import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import type { StayId } from '../../../kernel/ids.ts';
import { toIso } from '../../../kernel/times.ts';
import { boardView } from '../view.ts';
import { addRecord, emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import {
  begun,
  canonical,
  check,
  hold,
  hours,
  setUpWard,
  WARD,
  WardLog,
  type Told,
} from './history.testkit.ts';
import { anyEntry } from './random-entries.testkit.ts';

/** A ward's log together with who lies where, so that acts are written as the server writes them. */
class Ward {
  readonly log = new WardLog();
  readonly inBed = new Map<string, string>();
  private stays = 0;
  constructor(beds = 4) {
    setUpWard(this.log, beds);
    for (const [staff, role] of [
      ['nan', 'nurse'],
      ['ned', 'nurse'],
      ['ada', 'aide'],
    ]) {
      const payload = { staff, role, name: { ref: `name-${staff}` } };
      this.log.add(`ward/${WARD}`, { type: 'staff-member-added', payload });
    }
  }
  admit(bed: string, at = 0): string | null {
    if (this.inBed.has(bed)) return null;
    const stay = `stay-${++this.stays}`;
    this.log.add(`stay/${stay}`, { ...begun(stay, bed), at });
    this.bed('bed-taken', bed, stay, at);
    return stay;
  }
  end(bed: string, at = 0): void {
    const stay = this.inBed.get(bed);
    if (stay === undefined) return;
    this.log.add(`stay/${stay}`, { type: 'stay-ended', at, payload: { bed, to: 'home' } });
    this.bed('bed-freed', bed, stay, at);
  }
  swap(a: string, b: string, at = 0): void {
    const [one, other] = [this.inBed.get(a), this.inBed.get(b)];
    if (one === undefined || other === undefined || one === other) return;
    const moved = (from: string, to: string, swappedWith: string): Told => ({
      type: 'stay-moved',
      at,
      payload: { from, to, swappedWith },
    });
    this.log.add(`stay/${one}`, moved(a, b, other));
    this.log.add(`stay/${other}`, moved(b, a, one));
    this.bed('bed-freed', a, one, at);
    this.bed('bed-freed', b, other, at);
    this.bed('bed-taken', b, one, at);
    this.bed('bed-taken', a, other, at);
  }
  tell(stay: string, told: Told): void {
    this.log.add(`stay/${stay}`, told);
  }
  get everyStay(): readonly string[] {
    return Array.from({ length: this.stays }, (_, i) => `stay-${i + 1}`);
  }
  private bed(type: 'bed-taken' | 'bed-freed', bed: string, stay: string, at: number): void {
    this.log.add(`bed/${bed}`, { type, at, payload: { bed, stay } });
    if (type === 'bed-taken') this.inBed.set(bed, stay);
    else this.inBed.delete(bed);
  }
}

/** Folds a page as the projection does: what is missing is read from the log and handed over. */
function take(
  state: BoardState,
  log: WardLog,
  page: readonly LoggedEvent[],
  upTo = page.at(-1)?.position ?? 0,
): void {
  const { missing } = foldBoard(state, page);
  for (const stay of missing) {
    const events = log.record(stay).events.filter((e) => e.position <= upTo);
    addRecord(state, { stay, version: events.length, events });
  }
}
function rebuilt(log: WardLog): BoardState {
  const state = emptyBoard(WARD);
  take(state, log, log.events);
  return state;
}
const rowOf = (state: BoardState, bed: string, t: number) =>
  viewBoard(state, t).board.beds.find((b) => b.bed === bed)!;

describe('the board', () => {
  it('is empty and quiet before the ward is set up', () => {
    const { board, nextChange } = viewBoard(emptyBoard(WARD), hours(0));
    expect(boardView.parse(board).beds).toEqual([]);
    expect(nextChange).toBeNull();
  });

  it('BOARD-5 carries a plan with the person, not with the bed, through a swap', () => {
    const ward = new Ward();
    const [ada, ben] = [ward.admit('bed-1')!, ward.admit('bed-2')!];
    ward.tell(ada, check('walk', 1));
    ward.tell(ben, hold(1, 'out-of-bed', 20));
    ward.swap('bed-1', 'bed-2', 2);
    const state = rebuilt(ward.log);
    expect(rowOf(state, 'bed-2', hours(3)).stay).toMatchObject({
      stay: ada,
      tier: { word: 'Walk' },
      holds: [],
    });
    expect(rowOf(state, 'bed-1', hours(3)).stay).toMatchObject({ stay: ben, tier: { word: 'Not known' } });
    expect(rowOf(state, 'bed-1', hours(3)).stay!.holds).toHaveLength(1);
  });

  it('BOARD-5 gives a late entry to the stay it names and leaves the next occupant alone', () => {
    const ward = new Ward();
    const first = ward.admit('bed-1')!;
    ward.end('bed-1', 5);
    const second = ward.admit('bed-1', 5.1)!;
    const state = rebuilt(ward.log);
    const before = canonical(viewBoard(state, hours(6)).board);
    ward.tell(first, { ...hold(4.9, 'out-of-bed', 30), recorded: 5.2 });
    const { touched, missing } = foldBoard(state, ward.log.events.slice(-1));
    expect([...touched]).toEqual([first]);
    expect([...missing]).toEqual([]);
    expect(canonical(viewBoard(state, hours(6)).board)).toBe(before);
    expect(rowOf(state, 'bed-1', hours(6)).stay).toMatchObject({ stay: second, holds: [] });
  });

  it('drops a stay that has ended, and keeps one that is between two beds', () => {
    const ward = new Ward();
    const stay = ward.admit('bed-1')!;
    ward.admit('bed-2');
    const state = rebuilt(ward.log);
    ward.swap('bed-1', 'bed-2', 1);
    const act = ward.log.events.slice(-6);
    foldBoard(state, act.slice(0, 4));
    const { missing } = foldBoard(state, act.slice(4));
    expect([...missing]).toEqual([]);
    ward.end('bed-2', 2);
    foldBoard(state, ward.log.events.slice(-2));
    expect(state.records.has(stay as StayId)).toBe(false);
    expect(state.records.size).toBe(1);
  });

  it('BOARD-7 shows a person whose earlier entries are not loaded as not known, never as an empty bed', () => {
    const ward = new Ward();
    const stay = ward.admit('bed-1')!;
    ward.tell(stay, hold(1, 'out-of-bed', 20));
    const partly = ward.log.events.filter((e) => e.stream !== `stay/${stay}`);
    const state = emptyBoard(WARD);
    const { missing } = foldBoard(state, partly);
    expect([...missing]).toEqual([stay]);
    expect(rowOf(state, 'bed-1', hours(2))).toMatchObject({
      state: 'occupied',
      stay: { trust: { state: 'not-known' }, checkBeforeMoving: true },
    });
    addRecord(state, ward.log.record(stay));
    expect(rowOf(state, 'bed-1', hours(2)).stay!.holds).toHaveLength(1);
  });

  it('asks for a stream again when an event of it was missed', () => {
    const ward = new Ward();
    const stay = ward.admit('bed-1')!;
    const state = rebuilt(ward.log);
    ward.tell(stay, hold(1, 'out-of-bed', 20));
    ward.tell(stay, check('walk', 2));
    const { missing } = foldBoard(state, ward.log.events.slice(-1));
    expect([...missing]).toEqual([stay]);
    addRecord(state, ward.log.record(stay));
    expect(rowOf(state, 'bed-1', hours(3)).stay!.holds).toHaveLength(1);
  });

  it('skips events it has folded already', () => {
    const ward = new Ward();
    ward.admit('bed-1');
    const state = rebuilt(ward.log);
    const before = canonical(viewBoard(state, hours(1)).board);
    expect(foldBoard(state, ward.log.events).touched.size).toBe(0);
    expect(canonical(viewBoard(state, hours(1)).board)).toBe(before);
  });
});

type Act =
  | { readonly admit: number }
  | { readonly end: number }
  | { readonly swap: readonly [number, number] }
  | { readonly tell: Told; readonly whom: number }
  | { readonly rename: string }
  | { readonly name: number; readonly who: string | null; readonly hours: number };
const bed = fc.integer({ min: 1, max: 4 });
const acts: fc.Arbitrary<readonly Act[]> = fc.array(
  fc.oneof(
    { weight: 3, arbitrary: bed.map((admit) => ({ admit })) },
    { weight: 1, arbitrary: bed.map((end) => ({ end })) },
    { weight: 1, arbitrary: fc.tuple(bed, bed).map((swap) => ({ swap })) },
    { weight: 8, arbitrary: fc.record({ tell: anyEntry, whom: fc.nat({ max: 20 }) }) },
    { weight: 1, arbitrary: fc.constantFrom('21:30', '22:00').map((rename) => ({ rename })) },
    {
      weight: 2,
      arbitrary: fc.record({
        name: bed,
        who: fc.constantFrom('nan', 'ned', null),
        hours: fc.nat({ max: 12 }),
      }),
    },
  ),
  { maxLength: 60 },
);

function play(all: readonly Act[]): WardLog {
  const ward = new Ward();
  all.forEach((act, i) => {
    const at = i / 4;
    if ('admit' in act) ward.admit(`bed-${act.admit}`, at);
    else if ('end' in act) ward.end(`bed-${act.end}`, at);
    else if ('swap' in act) ward.swap(`bed-${act.swap[0]}`, `bed-${act.swap[1]}`, at);
    else if ('rename' in act) {
      ward.log.add(`ward/${WARD}`, { type: 'ward-changed', at, payload: { nightFrom: act.rename } });
    } else if ('name' in act) {
      const beds = [{ bed: `bed-${act.name}`, nurse: act.who, aide: 'ada' }];
      ward.log.add(`ward/${WARD}`, {
        type: 'carers-named',
        at,
        payload: { until: toIso(hours(at + act.hours)), beds },
      });
    } else {
      const stay = ward.everyStay[act.whom % Math.max(1, ward.everyStay.length)];
      if (stay !== undefined) ward.tell(stay, act.tell);
    }
  });
  return ward.log;
}

describe('the projection', { timeout: patience }, () => {
  const instants = fc.array(
    fc.integer({ min: 0, max: 400 }).map((q) => hours(q / 4)),
    { minLength: 1, maxLength: 5 },
  );
  it('BOARD-6 shows the same bytes live, in any pages and looked at in between, as rebuilt', () => {
    fc.assert(
      fc.property(
        acts,
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1 }),
        instants,
        (all, cuts, times) => {
          const log = play(all);
          const live = emptyBoard(WARD);
          let from = 0;
          for (let i = 0; from < log.events.length; i++) {
            const to = from + cuts[i % cuts.length]!;
            take(live, log, log.events.slice(from, to));
            viewBoard(live, times[i % times.length]!);
            from = to;
          }
          for (const t of times) {
            expect(canonical(viewBoard(live, t).board)).toBe(canonical(viewBoard(rebuilt(log), t).board));
          }
        },
      ),
      runs(80),
    );
  });

  it('is the same at every instant until the next change it names', () => {
    fc.assert(
      fc.property(acts, instants, (all, [t]) => {
        const log = play(all);
        const { board, nextChange } = viewBoard(rebuilt(log), t!);
        expect(nextChange).toBeGreaterThan(t!);
        expect(canonical(viewBoard(rebuilt(log), nextChange! - 1).board)).toBe(canonical(board));
      }),
      runs(60),
    );
  });

  it('goes on from the streams of those in bed as from the whole log', () => {
    fc.assert(
      fc.property(acts, fc.double({ min: 0, max: 1, noNaN: true }), instants, (all, part, [t]) => {
        const log = play(all);
        const cut = Math.floor(log.events.length * part);
        const state = emptyBoard(WARD);
        take(
          state,
          log,
          log.events.slice(0, cut).filter((e) => !e.stream.startsWith('stay/')),
          cut,
        );
        take(state, log, log.events.slice(cut));
        expect(canonical(viewBoard(state, t!).board)).toBe(canonical(viewBoard(rebuilt(log), t!).board));
      }),
      runs(60),
    );
  });
});
