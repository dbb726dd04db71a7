/** What a huddle asks first: what is different from the board that was known at the last one. */
import { describe, expect, it } from 'vitest';
import type { EventId, StayId } from '../../../kernel/ids.ts';
import type { BoardView } from '../../board/view.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import {
  begun,
  calendar,
  check,
  hold,
  hours,
  order,
  setUpWard,
  trigger,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import { changesBetween } from './changes.ts';

const say = (at: number) => sayDayTime(calendar.zone, at);
/** A ward in which these arrived at once, each in a bed of their own. */
function wardOf(...told: readonly (readonly Told[])[]): WardLog {
  const log = new WardLog();
  setUpWard(log);
  told.forEach((all, i) => arrive(log, i + 1, all));
  return log;
}
function arrive(log: WardLog, n: number, told: readonly Told[] = [], at = 0): void {
  log.add(`stay/stay-${n}`, { ...begun(`stay-${n}`, `bed-${n}`), at });
  log.add(`bed/bed-${n}`, { type: 'bed-taken', at, payload: { bed: `bed-${n}`, stay: `stay-${n}` } });
  tell(log, n, ...told);
}
const tell = (log: WardLog, n: number, ...told: readonly Told[]) => {
  for (const one of told) log.add(`stay/stay-${n}`, one);
};
function boardOf(log: WardLog, t: number): BoardView {
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return viewBoard(state, hours(t)).board;
}
/** What changed by `then` after these entries, from the board at `t`. */
function changed(log: WardLog, t: number, then: number, entries: (log: WardLog) => void) {
  const before = boardOf(log, t);
  entries(log);
  return changesBetween(before, boardOf(log, then), [], say);
}
const inWords = (changes: ReturnType<typeof changed>) =>
  changes.map((c) => `${c.label} ${c.kind}: ${c.words}`);

describe('what changed since the last huddle', () => {
  it('is nothing between a board and itself', () => {
    expect(changed(wardOf([check('walk', 1)], []), 2, 2, () => {})).toEqual([]);
  });
  it('is who arrived, who left and who moved', () => {
    const log = wardOf([check('walk', 1)], [check('walk', 1)]);
    const changes = changed(log, 2, 3, () => {
      arrive(log, 3, [], 2.5);
      tell(log, 1, { type: 'stay-ended', at: 2.5, payload: { bed: 'bed-1', to: 'home' } });
      log.add('bed/bed-1', { type: 'bed-freed', payload: { bed: 'bed-1', stay: 'stay-1' } });
      tell(log, 2, { type: 'stay-moved', at: 2.6, payload: { from: 'bed-2', to: 'bed-4' } });
      log.add('bed/bed-2', { type: 'bed-freed', payload: { bed: 'bed-2', stay: 'stay-2' } });
      log.add('bed/bed-4', { type: 'bed-taken', payload: { bed: 'bed-4', stay: 'stay-2' } });
    });
    expect(inWords(changes)).toEqual([
      '3 arrived: Arrived 24 Oct 20:30: not checked here yet',
      '4 moved: Moved from 2',
      '1 left: Left the ward',
    ]);
  });
  it('is the first check, then a tier that went up or down, with the check behind it', () => {
    const log = wardOf([]);
    const first = changed(log, 0.5, 2, () => tell(log, 1, check('edge', 1)));
    expect(inWords(first)).toContain('1 checked: Checked: Edge');
    expect(first.find((c) => c.kind === 'checked')!.because.flatMap((b) => b.facts)).not.toEqual([]);
    const up = changed(log, 2, 4, () => tell(log, 1, check('walk', 3)));
    expect(inWords(up)).toContain('1 tier-up: Walk now cleared, was Edge');
    expect(up.map((c) => c.kind)).toContain('less-help');
    const down = changed(log, 4, 6, () => tell(log, 1, check('stand', 5, { stand: { outcome: 'not-met' } })));
    expect(inWords(down)).toContain('1 tier-down: Edge now, was Walk');
    expect(down.map((c) => c.kind)).toContain('more-help');
  });
  it('says more and less help move by move, with what it was', () => {
    const log = wardOf([check('edge', 1)]);
    const [help] = changed(log, 2, 4, () => tell(log, 1, check('walk', 3))).filter(
      (c) => c.kind === 'less-help',
    );
    expect(help!.words).toMatch(/^Less help: bed to chair now .+, .+ \(was .+, .+\); also toilet/);
    expect(help!.because.length).toBeGreaterThan(0);
  });
  it('is trust lost by a trigger, and by validity that ran out without any entry', () => {
    const fell = wardOf([check('walk', 1)]);
    const after = changed(fell, 2, 4, () => tell(fell, 1, trigger('fall', 3)));
    expect(inWords(after)).toContain('1 trust-lost: Check again: Fall, 24 Oct 21:00');
    expect(after.map((c) => c.kind)).toContain('more-help');
    const old = wardOf([check('walk', 1)]);
    expect(inWords(changed(old, 2, 60, () => {}))).toEqual([
      expect.stringMatching(/^1 trust-lost: Check again: Last check 24 Oct 19:00: validity ran out$/),
    ]);
  });
  it('is a hold placed, with its review, and a hold ended', () => {
    const log = wardOf([check('walk', 1)]);
    const placed = changed(log, 2, 4, () => tell(log, 1, hold(3, 'out-of-bed', 12)));
    expect(inWords(placed)).toContain(
      '1 hold-placed: Hold placed on out of bed (waiting for review), review 25 Oct 05:00',
    );
    const [id] = placed.find((c) => c.kind === 'hold-placed')!.because[0]!.facts;
    const ended = changed(log, 4, 6, () =>
      tell(log, 1, { type: 'hold-ended', at: 5, payload: { hold: 'hold-1', placedBy: id } }),
    );
    expect(inWords(ended)).toContain('1 hold-ended: Hold ended on out of bed (waiting for review)');
  });
  it('is a new order once, not also the one it replaces', () => {
    const bears = (what: string) => ({ about: 'weight-bearing', limb: 'left-leg', bears: what });
    const log = wardOf([check('walk', 1), order(1.5, bears('unrestricted'))]);
    const said = inWords(changed(log, 2, 4, () => tell(log, 1, order(3, bears('none')))));
    expect(said.filter((one) => one.includes('order-changed'))).toEqual([
      '1 order-changed: Order: weight bearing left leg none',
    ]);
  });
  it('is what happened and is answered by now, of whoever it happened to first', () => {
    const log = wardOf([check('walk', 1)], [check('walk', 1)]);
    const before = boardOf(log, 2);
    arrive(log, 3, [], 2.5);
    const event = 'e-fall' as EventId;
    const happened = [{ stay: 'stay-2' as StayId, event, at: hours(2.2), words: 'Fall' }];
    const changes = changesBetween(before, boardOf(log, 3), happened, say);
    expect(inWords(changes).slice(0, 2)).toEqual([
      '2 happened: Fall, 24 Oct 20:12',
      expect.stringMatching(/^3 arrived/),
    ]);
    expect(changes[0]!.because[0]!.facts).toEqual([event]);
  });
  it('between a plan of the board and a comfort plan is no more and no less help', () => {
    const log = wardOf([check('walk', 1)]);
    const comfort = changed(log, 2, 4, () =>
      tell(log, 1, { type: 'scope-set', at: 3, payload: { scope: 'comfort' } }),
    );
    expect(inWords(comfort)).toEqual(['1 other-help: Comfort plan now']);
  });
});
