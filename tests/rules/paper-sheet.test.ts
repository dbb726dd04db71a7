/** What a paper sheet says of a board's rows, once and whole. */
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { saidOfAll, sheetLines } from '@footboard/server/capabilities/paper/sheet';
import { describe, expect, it } from 'vitest';
import { NOON, bedRow, boardRow, planFor, stayRow } from '../../web/board/rows.testkit.ts';

const DAY: readonly TaskPlan[] = [planFor('bed-chair'), planFor('toilet'), planFor('walk')];
const linesOf = (...stays: StayView[]) =>
  sheetLines(boardRow(stays.map((stay, i) => bedRow(`A${i + 1}`, stay))), NOON, () => 'nobody');
const nightOf = (night: readonly TaskPlan[]) =>
  linesOf(stayRow({ plan: { day: [...DAY], night: [...night] } }))[0]!.plans[1]!.words;

describe('the night on a paper sheet', () => {
  it('PAPER-3 is not said again where it is as by day', () => {
    expect(nightOf(DAY)).toEqual([{ task: '', how: 'as by day' }]);
  });

  it('PAPER-3 is said where it differs, and of the rest that it does not', () => {
    const [chair, toilet, walk] = DAY;
    expect(nightOf([chair!, { ...toilet!, people: 'two' }, walk!])).toEqual([
      { task: 'toilet', how: '2 people, frame' },
      { task: '', how: 'otherwise as by day' },
    ]);
  });

  it('PAPER-3 is said whole where a task has no plan at night: "otherwise as by day" would promise one', () => {
    expect(nightOf(DAY.slice(0, 2)).map(({ task }) => task)).toEqual(['bed to chair', 'toilet']);
    expect(nightOf([])).toEqual([]);
  });
});

describe('what to mind on a paper sheet', () => {
  const minding = (...words: string[]) =>
    stayRow({ cautions: words.map((one) => ({ words: one, because: [] })) });

  it('PAPER-3 is said once of everybody, and nothing is left out', () => {
    const stays = [minding('shoes on', 'left leg'), minding('shoes on'), minding('shoes on')];
    const board = boardRow(stays.map((stay, i) => bedRow(`A${i + 1}`, stay)));
    expect(saidOfAll(board)).toEqual(['shoes on']);
    expect(linesOf(...stays).map(({ minds }) => minds)).toEqual([['left leg'], [], []]);
  });

  it('PAPER-3 stays each one’s own where it is not everybody’s, or there are only two', () => {
    expect(linesOf(minding('shoes on'), minding('shoes on'))[1]!.minds).toEqual(['shoes on']);
    expect(linesOf(minding('a'), minding('b'), minding('a'))[2]!.minds).toEqual(['a']);
  });
});
