/** Who has in hand what changed since the last huddle, and when it was. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import { begun, calendar, hold, hours, setUpWard, WARD, WardLog } from '../../board/rules/history.testkit.ts';
import { foldHuddle } from './huddle-state.ts';
import { reviewOf } from './review.ts';

/** One person in bed 1, which a nurse has in hand until the evening after. */
function wardOfOne(): WardLog {
  const log = new WardLog();
  setUpWard(log, 1);
  log.add(`ward/${WARD}`, {
    type: 'staff-member-added',
    payload: { staff: 'nan', role: 'nurse', name: { ref: 'name-nan' } },
  });
  log.add(`ward/${WARD}`, {
    type: 'carers-named',
    payload: { until: toIso(hours(24)), beds: [{ bed: 'bed-1', nurse: 'nan', aide: null }] },
  });
  log.add('stay/stay-1', begun());
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
  return log;
}
const boardAt = (log: WardLog, t: number) => {
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return viewBoard(state, hours(t)).board;
};
/** What the huddle 3 h after the arrival says has changed in its last hour. */
function changes(happen: (log: WardLog) => void) {
  const log = wardOfOne();
  const before = boardAt(log, 2);
  happen(log);
  const now = boardAt(log, 3);
  const input = { state: foldHuddle(log.events), happened: [], t: hours(3), calendar, texts: new Map() };
  return reviewOf({ ...input, before, now }).changes;
}
const leaves = (log: WardLog) => {
  log.add('stay/stay-1', { type: 'stay-ended', at: 2.5, payload: { bed: 'bed-1', to: 'home' } });
  log.add('bed/bed-1', { type: 'bed-freed', at: 2.5, payload: { bed: 'bed-1', stay: 'stay-1' } });
};

describe('what changed since the last huddle', () => {
  it('given somebody who left, then nobody has that in hand, though a nurse has the bed', () => {
    expect(changes(leaves)).toMatchObject([{ kind: 'left', stay: 'stay-1', bed: 'bed-1', owner: null }]);
  });

  it('given somebody who left and somebody who came into the same bed, then the nurse has who came', () => {
    const both = changes((log) => {
      leaves(log);
      log.add('stay/stay-2', { ...begun('stay-2'), at: 2.6 });
      log.add('bed/bed-1', { type: 'bed-taken', at: 2.6, payload: { bed: 'bed-1', stay: 'stay-2' } });
    });
    expect(both.map(({ kind, stay, owner }) => [kind, stay, owner])).toEqual([
      ['arrived', 'stay-2', 'nan'],
      ['left', 'stay-1', null],
    ]);
    expect(both[0]!.words).toBe('Arrived 24 Oct 20:36: not checked here yet');
  });

  it("given a hold, then when it is to be reviewed by the ward's clock, and whose bed it is", () => {
    const placed = changes((log) => log.add('stay/stay-1', hold(2.5, 'walking', 6)));
    expect(placed.find(({ kind }) => kind === 'hold-placed')).toMatchObject({
      owner: 'nan',
      words: 'Hold placed on walking (waiting for review), review 25 Oct 00:00',
      because: [{ words: 'Placed 24 Oct 20:30' }],
    });
  });
});
