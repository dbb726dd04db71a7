/** The order of the checks to do is ours: common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { EventId, StayId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import { begun, hours, setUpWard, WARD, WardLog } from '../../board/rules/history.testkit.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { TriggerKind } from '../../orders/values.ts';
import { dueFirst, sayElapsed, type Row } from './due-first.ts';

const T = hours(20);
const say = (at: number) => `h${(at - hours(0)) / HOUR}`;

/** One real row, of which each test changes what it is about. */
const plainRow: Row = (() => {
  const log = new WardLog();
  setUpWard(log, 1);
  log.add('stay/s', begun('s'));
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 's' as StayId } });
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  const bed = viewBoard(state, hours(1)).board.beds[0]!;
  return { bed, stay: bed.stay! };
})();

type Due = StayView['due']['state'];
function row(label: string, state: Due, at: number | null, ...kinds: readonly TriggerKind[]): Row {
  const bed: BedView = { ...plainRow.bed, label };
  const openTriggers = kinds.map((kind, i) => ({
    event: `${label}-${i}` as EventId,
    kind,
    at: hours(19),
    words: kind,
  }));
  const because = [{ rule: 'due/test', facts: [`${label}-why` as EventId], words: `why ${label}` }];
  return {
    bed,
    stay: {
      ...plainRow.stay,
      due: { state, at: at === null ? null : hours(at), because },
      trust: { ...plainRow.stay.trust, openTriggers },
    },
  };
}
const order = (...rows: readonly Row[]) => dueFirst(rows, T, say).map((d) => d.bed.label);
const words = (...rows: readonly Row[]) => dueFirst(rows, T, say).map((d) => d.because.words);

describe('whose check comes first', () => {
  it('overdue with a trigger that keeps the person still, then by how long overdue, then due, then at the next move', () => {
    expect(
      order(
        row('next', 'at-next-move', null, 'sedation'),
        row('due', 'due', 19.9),
        row('a little', 'overdue', 19),
        row('long', 'overdue', 2),
        row('fell', 'overdue', 19.5, 'fall'),
      ),
    ).toEqual(['fell', 'long', 'a little', 'due', 'next']);
  });
  it('a trigger that only asks for one more person does not go before someone longer overdue', () => {
    expect(order(row('sedated', 'overdue', 19.5, 'sedation'), row('long', 'overdue', 2))).toEqual([
      'long',
      'sedated',
    ]);
  });
  it('of two who fell, the longer overdue comes first', () => {
    expect(order(row('later', 'overdue', 19, 'fall'), row('earlier', 'overdue', 18, 'faint'))).toEqual([
      'earlier',
      'later',
    ]);
  });
  it('whoever must stay put comes first, before one who is due and before a routine check that is overdue', () => {
    expect(
      order(
        row('sedated', 'at-next-move', null, 'sedation'),
        row('fell', 'at-next-move', null, 'fall'),
        row('due', 'due', 19.9),
      ),
    ).toEqual(['fell', 'due', 'sedated']);
    expect(
      order(row('routine', 'overdue', 19.9), row('fell', 'due', 19.95, 'fall'), row('late', 'overdue', 2)),
    ).toEqual(['fell', 'late', 'routine']);
  });
  it('equals keep the order of the beds', () => {
    expect(
      order(
        row('2', 'overdue', 10),
        row('1', 'overdue', 10),
        row('4', 'due', 19.9),
        row('3', 'due', 19.8),
        row('6', 'at-next-move', null),
        row('5', 'at-next-move', null, 'sedation'),
      ),
    ).toEqual(['2', '1', '4', '3', '6', '5']);
  });
  it('nobody who is off the ward, not due, or without a due time and without a trigger', () => {
    const away = row('away', 'at-next-move', null, 'fall');
    const off: Row = {
      ...away,
      stay: { ...away.stay, away: { since: hours(19), reason: 'test', dueBack: null } },
    };
    expect(order(off, row('later', 'not-due', 22), row('comfort', 'none', null))).toEqual([]);
    expect(order(row('new', 'not-due', 22, 'arrival'))).toEqual([]);
  });
  it('nobody of whom nothing says why, nor when', () => {
    const said = row('1', 'at-next-move', null);
    const due = (state: 'at-next-move' | 'due' | 'overdue', at: number | null): Row => ({
      ...said,
      stay: { ...said.stay, due: { ...said.stay.due, state, at, because: [] } },
    });
    expect(order(said)).toEqual(['1']);
    expect(order(due('at-next-move', null))).toEqual([]);
    expect(order(due('due', null), due('overdue', null))).toEqual([]);
    expect(order(due('due', hours(19)))).toEqual(['1']);
  });
  it('also who has no due time, when something happened', () => {
    expect(order(row('comfort', 'none', null, 'fall'))).toEqual(['comfort']);
  });
});

describe('the reason for a place in that order', () => {
  it('says since when and by how long, and what happened', () => {
    expect(words(row('1', 'overdue', 16.5, 'sedation'))).toEqual([
      'Check overdue since h16.5, by 3 h 30 min (sedation, h19)',
    ]);
    expect(words(row('1', 'overdue', 16.5))).toEqual(['Check overdue since h16.5, by 3 h 30 min']);
    expect(words(row('1', 'overdue', 20))).toEqual(['Check overdue since h20']);
    expect(words(row('1', 'due', 19, 'sedation', 'order-change'))).toEqual([
      'Check due since h19 (sedation, h19; order-change, h19)',
    ]);
  });
  it('says who stays put until a nurse has looked', () => {
    expect(words(row('1', 'overdue', 18, 'fall', 'sedation'))).toEqual([
      'Check overdue since h18, by 2 h; stay put until a nurse has looked: fall, h19; sedation, h19',
    ]);
  });
  it('says what the check before the next move is for, never the arrival alone', () => {
    expect(words(row('1', 'at-next-move', null, 'arrival', 'faint'))).toEqual([
      'Check before the next move: faint, h19',
    ]);
    expect(words(row('1', 'at-next-move', null))).toEqual(['Check: why 1']);
  });
  it('names its rule and the entries it stands on', () => {
    const reasons = (r: Row) => dueFirst([r], T, say).map(({ because: b }) => [b.rule, ...b.facts]);
    expect(reasons(row('1', 'overdue', 18, 'fall'))).toEqual([['due-first/overdue-and-kept-still', '1-0']]);
    expect(reasons(row('1', 'overdue', 18))).toEqual([['due-first/overdue']]);
    expect(reasons(row('1', 'due', 18))).toEqual([['due-first/due']]);
    expect(reasons(row('1', 'none', null, 'fall'))).toEqual([['due-first/before-the-next-move', '1-0']]);
    expect(reasons(row('1', 'at-next-move', null))).toEqual([['due-first/before-the-next-move', '1-why']]);
  });
});

describe('a length of time', () => {
  it.each([
    [0, ''],
    [MINUTE - 1, ''],
    [MINUTE, '1 min'],
    [HOUR - 1, '59 min'],
    [HOUR, '1 h'],
    [3 * HOUR + 20 * MINUTE, '3 h 20 min'],
    [27 * HOUR + 59_999, '27 h'],
  ])('of %d ms reads "%s"', (ms, said) => {
    expect(sayElapsed(ms)).toBe(said);
  });
});
