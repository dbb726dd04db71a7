/** The next check while signs stand against starting: nobody is told to watch an ordinary move then. */
import { describe, expect, it } from 'vitest';
import { germanBook } from '../../../i18n/phrases/german.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  confirm,
  hold,
  hours,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';

const at = (h: number) => toIso(hours(h));
const pressure = (posture: string, h: number, minute: number, systolic: number) => ({
  kind: 'pressure',
  posture,
  minute,
  systolic,
  diastolic: 35,
  at: toIso(hours(h + (posture === 'lying' ? 0 : minute / 60))),
});
/** Walks, with a whole pressure set: nothing is open, so that the next check is a confirm. */
const walks: Told = {
  ...check(
    'walk',
    1,
    {},
    {
      depth: 'full-with-pressure',
      risingSymptoms: [],
      readings: [
        pressure('lying', 1, 5, 120),
        pressure('standing', 1, 1, 118),
        pressure('standing', 1, 3, 119),
      ],
    },
  ),
  id: 'walks',
};
const measured = (h: number, ...readings: object[]): Told => ({
  ...session(h, { readings: readings as Reading[] }),
  role: 'nurse',
  id: `measured-${h}`,
});
const on = (room: 'criticalCare' | 'earlyWarning'): RulesDocument => {
  const rules = structuredClone(DEFAULT_RULES) as unknown as Record<string, { on: { value: boolean } }>;
  rules[room]!.on.value = true;
  return rules as unknown as RulesDocument;
};
const view = (t: number, told: readonly Told[], rules: RulesDocument = DEFAULT_RULES) =>
  evaluateStay(stayOf(walks, ...told), { ...ward, rules }, calendar, hours(t)).view;
const next = (...args: Parameters<typeof view>) => view(...args).nextCheck!;
const low = { ...pressure('seated', 2, 5, 88), at: at(2) };

describe('the next check while signs stand against starting', () => {
  it('is a confirm where nothing stands against it', () => {
    expect(next(3, [])).toMatchObject({ depth: 'confirm', from: 'walk' });
  });
  it('is a full one from the first stage, with the reason and its entry', () => {
    const said = next(3, [measured(2, { kind: 'oxygen', saturation: 85, at: at(2) })]);
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
    expect(said.because).toContainEqual({
      rule: 'next-check/not-now',
      facts: ['measured-2'],
      words: 'Not now: oxygen saturation 85 % is below 90 %',
    });
    expect(said.because.map((b) => b.words).join()).not.toContain('Nothing changed and nothing open');
    expect(germanBook().say('Not now: systolic 88 mmHg is below 90')).toBe(
      'Jetzt nicht: systolisch 88 mmHg liegt unter 90',
    );
  });
  it('a pressure too low, seated in a session, is such a reason', () => {
    const said = next(3, [measured(2, low)]);
    expect(said.depth).not.toBe('confirm');
    expect(said.from).toBe('clear');
    expect(said.because).toContainEqual(
      expect.objectContaining({ words: 'Not now: systolic 88 mmHg is below 90', facts: ['measured-2'] }),
    );
  });
  it('is a confirm again once a later reading is within the limits', () => {
    const well = { kind: 'oxygen', saturation: 97 };
    const told = [
      measured(2, { ...well, saturation: 85, at: at(2) }),
      measured(3, { ...well, at: at(3) }),
      confirm(3.5, 'walks'),
    ];
    const { mayStart, nextCheck, trust } = view(4, told);
    expect(mayStart!.word).toBe('ask-first');
    expect(trust.openTriggers).toEqual([]);
    expect(nextCheck!.because.map((b) => b.rule)).not.toContain('next-check/not-now');
  });
  it('where a ward turned the score on, an emergency review is such a reason', () => {
    const score: Told = {
      type: 'early-warning-recorded',
      at: 2,
      id: 'score',
      payload: { score: 9, anyThree: true, scale: 1 },
    };
    const said = next(3, [score], on('earlyWarning'));
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
    expect(said.because.find((b) => b.rule === 'next-check/not-now')).toMatchObject({
      facts: ['score'],
      words: expect.stringContaining('early-warning score 9'),
    });
  });
  it('where a ward turned them on, a bar of critical care is such a reason', () => {
    const signs: Told = {
      type: 'critical-care-signs-recorded',
      at: 2,
      id: 'care',
      payload: { bars: ['femoral-sheath'] },
    };
    expect(next(3, [signs])).toMatchObject({ depth: 'confirm' });
    const said = next(3, [signs], on('criticalCare'));
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
    expect(said.because).toContainEqual({
      rule: 'next-check/not-now',
      facts: ['care'],
      words: 'Not now: critical care: femoral sheath',
    });
  });
  it('does not hide why else it begins again', () => {
    const said = next(4, [trigger('fall', 3), measured(2, low)]);
    expect(said.because.map((b) => b.rule)).toEqual(
      expect.arrayContaining(['next-check/trigger', 'next-check/not-now', 'next-check/from-first']),
    );
    const old = next(14, [measured(13.5, { kind: 'oxygen', saturation: 85, at: at(13.5) })]);
    expect(old.because.map((b) => b.rule)).toEqual(
      expect.arrayContaining(['next-check/not-now', 'next-check/from-first']),
    );
  });
  it('a sign that only asks first is no such reason: a confirm does', () => {
    const told = [measured(2, { kind: 'heart-rate', perMinute: 120, at: at(2) })];
    const { mayStart, nextCheck } = view(3, told);
    expect(mayStart!.reasons.map((r) => r.words)).toContain('heart rate 120 is 111 or more');
    expect(nextCheck).toMatchObject({ depth: 'confirm' });
    expect(nextCheck!.because.map((b) => b.rule)).not.toContain('next-check/not-now');
  });
  it('a hold is no sign: a deeper check does not answer it', () => {
    expect(next(3, [hold(2, 'out-of-bed', 9)])).toMatchObject({ depth: 'confirm' });
  });
  it('changes when a reading begins to count, and names that instant', () => {
    const later = measured(2, { kind: 'oxygen', saturation: 85, at: at(2.5) });
    const first = evaluateStay(stayOf(walks, later), ward, calendar, hours(2.2));
    expect(first.nextChange).toBeLessThanOrEqual(hours(2.5));
    expect(next(2.5, [later]).because.map((b) => b.rule)).toContain('next-check/not-now');
  });
});
