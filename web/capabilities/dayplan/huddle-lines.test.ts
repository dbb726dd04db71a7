import { describe, expect, it } from 'vitest';
import type { DebtView, SignView } from '@footboard/shared/capabilities/board/activity-view';
import { awakeMs, debtWords } from '../../board/debt.ts';
import { HOUR, NOON, bedRow, stayRow } from '../../board/rows.testkit.ts';
import { debtLines, proposalLines, signLines } from './huddle-lines.ts';

const debt = (over: Partial<DebtView> = {}): DebtView => ({
  since: NOON - 5 * HOUR,
  sleptMs: 0,
  pausedAt: null,
  owed: true,
  clears: 'One time up clears it',
  because: [{ rule: 'debt', facts: [], words: 'last up at 07:00' }],
  ...over,
});
const sign = (kind: SignView['kind'], words: string): SignView => ({ kind, words, because: [] });

describe('waking time since last up', () => {
  it('runs with the clock, less what was slept', () => {
    expect(awakeMs(debt(), NOON)).toBe(5 * HOUR);
    expect(awakeMs(debt({ since: NOON - 14 * HOUR, sleptMs: 10 * HOUR }), NOON)).toBe(4 * HOUR);
    expect(awakeMs(debt(), NOON + HOUR)).toBe(6 * HOUR);
  });
  it('stands still at night', () => {
    const paused = debt({ pausedAt: NOON - 2 * HOUR });
    expect(awakeMs(paused, NOON)).toBe(3 * HOUR);
    expect(awakeMs(paused, NOON + 4 * HOUR)).toBe(3 * HOUR);
    expect(debtWords(paused, stayRow().lastUp, NOON)).toBe(
      '3 waking hours since last up, not counted at night',
    );
  });
  it('is never below nothing, whatever this screen’s clock says', () => {
    expect(awakeMs(debt({ since: NOON + HOUR }), NOON)).toBe(0);
    expect(debtWords(debt({ since: NOON }), stayRow().lastUp, NOON)).toBe(
      'under 1 waking hour since last up',
    );
  });
  it('is said in hours however many, and one hour as one', () => {
    const words = (hours: number) => debtWords(debt({ since: NOON - hours * HOUR }), stayRow().lastUp, NOON);
    expect(words(97)).toBe('97 waking hours since last up');
    expect(words(1)).toBe('1 waking hour since last up');
    expect(words(0.99)).toBe('under 1 waking hour since last up');
  });
  it('without a time up is counted from arrival, and says that none is recorded', () => {
    expect(debtWords(debt(), null, NOON)).toBe('5 waking hours since arrival, no time up recorded');
  });
});

describe('the huddle’s lines from the rows', () => {
  it('puts first who has been awake longest since last up', () => {
    const beds = [
      bedRow('A1', stayRow({ debt: debt() })),
      bedRow('A2', stayRow({ debt: debt({ since: NOON - 9 * HOUR, sleptMs: HOUR }) })),
      bedRow('A3', null),
    ];
    expect(debtLines(beds, NOON).map((line) => `${line.label} ${line.words}`)).toEqual([
      'A2 8 waking hours since last up; one time up clears it',
      'A1 5 waking hours since last up; one time up clears it',
    ]);
    expect(debtLines(beds, NOON)[1]!.because).toEqual(debt().because);
  });
  it('leaves out who owes nothing yet, and who is away', () => {
    const away = { since: NOON - HOUR, reason: 'test', dueBack: null };
    const beds = [
      bedRow('A1', stayRow({ debt: debt({ owed: false }) })),
      bedRow('A2', stayRow({ debt: null })),
      bedRow('A3', stayRow({ debt: debt(), away })),
    ];
    expect(debtLines(beds, NOON)).toEqual([]);
  });
  it('puts what is lost before who may be ready for more, each in bed order, one line a sign', () => {
    const beds = [
      bedRow('A1', stayRow({ signs: [sign('ready', 'ready to check Turn')] })),
      bedRow(
        'A2',
        stayRow({ signs: [sign('below-baseline', 'below usual'), sign('refusals', 'said no 3 times')] }),
      ),
      bedRow('A3', stayRow({ signs: [sign('stages-lost', 'two stages lost')] })),
      bedRow('A4', stayRow({ signs: [sign('below-baseline', 'below usual')] })),
    ];
    expect(signLines(beds).map((line) => `${line.label} ${line.words}`)).toEqual([
      'A3 Two stages lost',
      'A2 Said no 3 times',
      'A2 Below usual',
      'A4 Below usual',
      'A1 Ready to check Turn',
    ]);
  });
  it('names the step and the goal that wait to be accepted', () => {
    const goal = { activity: 'walk', timesUp: 3, metres: 40 } as const;
    const beds = [
      bedRow('A1', stayRow({ proposal: { step: 'up', goal, sessions: [], because: [] } })),
      bedRow('A2', stayRow({ proposal: { step: 'back', goal, sessions: [], because: [] } })),
      bedRow('A3'),
    ];
    expect(proposalLines(beds).map((line) => `${line.label} ${line.words}`)).toEqual([
      'A1 A step up: 3 times walk, 40 m',
      'A2 A step back, and a review: 3 times walk, 40 m',
    ]);
  });
});
