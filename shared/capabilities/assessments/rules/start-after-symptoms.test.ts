/**
 * What the last check saw of symptoms and of a low pressure on standing, for "may we start". Limit of
 * the standing pressure and what is asked: design, section 4 (common practice).
 */
import { describe, expect, it } from 'vitest';
import { germanBook } from '../../../i18n/phrases/german.ts';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  stayOf,
  ward,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';

const pressure = (posture: string, h: number, minute: number, systolic: number) => ({
  kind: 'pressure',
  posture,
  minute,
  systolic,
  diastolic: 35,
  at: toIso(hours(h + minute / 60)),
});
const lying = (h: number) => pressure('lying', h, 0, 120);
type Says = Parameters<typeof check>[2];
const by = (role: Role, id: string, told: Told): Told => ({ ...told, role, id });
const checked = (last: StageId, h: number, says: Says, extra: Record<string, unknown> = {}): Told =>
  by('nurse', `check-${h}`, check(last, h, says, extra));
const dizzy = (h: number, last: StageId = 'stand', says: Says = { stand: { outcome: 'not-met' } }) =>
  checked(last, h, says, { risingSymptoms: ['dizzy', 'blurred-sight'], readings: [lying(h)] });
const low = (h: number, says: Says = { stand: { outcome: 'not-met' } }) =>
  checked('stand', h, says, { readings: [lying(h), pressure('standing', h, 1, 82)] });

const start = (t: number, ...told: Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(t)).view.mayStart!;
const SYMPTOMS = 'symptoms on rising at the last check (dizzy, blurred sight); Stand not cleared since';
const LOW = 'standing systolic 82 mmHg at the last check is below 90; Stand not cleared since';
const CLEAR = 'A symptom at the start of the last check';
const said = (words: string, t: number, ...told: Told[]) =>
  start(t, ...told).reasons.filter((r) => r.words === words);

describe('a symptom at the start of the last check', () => {
  const ill = checked('walk', 2, { clear: { symptom: true } });
  it('asks first although the start was met, with the check and its time', () => {
    expect(said(CLEAR, 3, ill)).toEqual([
      {
        word: 'ask-first',
        words: CLEAR,
        limit: null,
        source: 'common practice, no source',
        takenAt: hours(2),
        facts: ['check-2'],
      },
    ]);
    expect(start(3, ill).word).toBe('ask-first');
  });
  it('until a later check without one, by someone who may free', () => {
    expect(said(CLEAR, 5, ill, checked('clear', 4, {}))).toEqual([]);
    expect(said(CLEAR, 5, ill, by('aide', 'aide', check('clear', 4)))).toHaveLength(1);
    expect(said(CLEAR, 5, ill, by('nurse', 'other', check('clear', 2)))).toHaveLength(1);
  });
  it('by anyone, as anyone may make it safer', () => {
    const aide = by('aide', 'aide', check('clear', 4, { clear: { symptom: true } }));
    expect(said(CLEAR, 5, checked('walk', 2, {}), aide).map((r) => r.facts)).toEqual([['aide']]);
  });
});

describe('symptoms on rising at the last check', () => {
  it('ask first while standing is not cleared since, with the check and its time', () => {
    expect(said(SYMPTOMS, 3, dizzy(2))).toEqual([
      {
        word: 'ask-first',
        words: SYMPTOMS,
        limit: null,
        source: 'common practice, no source',
        takenAt: hours(2),
        facts: ['check-2'],
      },
    ]);
    expect(said(SYMPTOMS, 60, dizzy(2))).toHaveLength(1);
    expect(germanBook().say(SYMPTOMS)).toBe(
      'Symptome beim Aufstehen bei der letzten Prüfung (schwindelig, verschwommenes Sehen); Stehen seither nicht erreicht',
    );
  });
  it('also where the check stopped before standing', () => {
    expect(said(SYMPTOMS, 3, checked('walk', 1, {}), dizzy(2, 'edge', {}))).toHaveLength(1);
  });
  it('until standing is cleared, or a later check asked and there were none', () => {
    expect(said(SYMPTOMS, 5, dizzy(2), checked('stand', 4, {}))).toEqual([]);
    expect(said(SYMPTOMS, 5, dizzy(2), checked('edge', 4, {}, { risingSymptoms: [] }))).toEqual([]);
    // A check that did not ask says nothing of it.
    expect(said(SYMPTOMS, 5, dizzy(2), checked('edge', 4, {}))).toHaveLength(1);
    const aide = by('aide', 'aide', check('edge', 4, {}, { risingSymptoms: [] }));
    expect(said(SYMPTOMS, 5, dizzy(2), aide)).toHaveLength(1);
  });
  it('say nothing where they were asked and there were none', () => {
    expect(
      start(3, checked('stand', 2, {}, { risingSymptoms: [] })).reasons.map((r) => r.words),
    ).not.toContain(expect.stringContaining('symptoms on rising'));
  });
});

describe('a low pressure on standing at the last check', () => {
  it('asks first while standing is not cleared since, with the reading, its limit and its time', () => {
    expect(said(LOW, 3, low(2))).toEqual([
      {
        word: 'ask-first',
        words: LOW,
        limit: 90,
        source: DEFAULT_RULES.rising.standingSystolicBelow.source,
        takenAt: hours(2 + 1 / 60),
        facts: ['check-2'],
      },
    ]);
    expect(germanBook().say(LOW)).toBe(
      'systolisch im Stehen 82 mmHg bei der letzten Prüfung, unter 90; Stehen seither nicht erreicht',
    );
  });
  it('names the lowest of that check', () => {
    const two = checked(
      'stand',
      2,
      { stand: { outcome: 'not-met' } },
      { readings: [lying(2), pressure('standing', 2, 1, 82), pressure('standing', 2, 3, 88)] },
    );
    expect(said(LOW, 3, two)).toHaveLength(1);
  });
  it('until standing is cleared, or a later standing pressure is not low', () => {
    expect(said(LOW, 5, low(2), checked('stand', 4, {}))).toEqual([]);
    const better = { readings: [lying(4), pressure('standing', 4, 1, 112)] };
    const again = checked('stand', 4, { stand: { outcome: 'not-met' } }, better);
    expect(said(LOW, 5, low(2), again)).toEqual([]);
    expect(said(LOW, 5, low(2), checked('edge', 4, {}, { readings: [lying(4)] }))).toHaveLength(1);
    expect(said(LOW, 5, low(2), by('aide', 'aide', check('edge', 4, {}, better)))).toHaveLength(1);
  });
  it('89 asks, 90 does not', () => {
    const at = (systolic: number) =>
      start(
        3,
        checked('edge', 2, {}, { readings: [lying(2), pressure('standing', 2, 1, systolic)] }),
      ).reasons.filter((r) => r.words.startsWith('standing systolic'));
    expect(at(89)).toHaveLength(1);
    expect(at(90)).toEqual([]);
  });
});
