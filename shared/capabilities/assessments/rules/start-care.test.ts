/** May we start, on wards that turned the critical-care limits or the early-warning score on. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { CriticalCareSigns, Reading } from '../values.ts';

const well = (h: number): Reading[] => [
  { kind: 'pressure', posture: 'lying', systolic: 120, diastolic: 70, at: toIso(hours(h)) },
  { kind: 'heart-rate', perMinute: 80, at: toIso(hours(h)) },
  { kind: 'oxygen', saturation: 97, at: toIso(hours(h)) },
  { kind: 'breathing', perMinute: 16, at: toIso(hours(h)) },
  { kind: 'temperature', celsius: 37, at: toIso(hours(h)) },
  { kind: 'pain', outOfTen: 0, at: toIso(hours(h)) },
];
const checked = (h: number, extra: object = {}): Told => ({
  ...check('walk', h, {}, { readings: well(h), ...extra }),
  id: `check-${h}`,
});

const turnedOn = (group: 'criticalCare' | 'earlyWarning') => {
  const document = structuredClone(DEFAULT_RULES);
  document[group].on.value = true;
  return { ...ward, rules: document };
};
const on = { criticalCare: turnedOn('criticalCare'), earlyWarning: turnedOn('earlyWarning'), off: ward };
const start = (t: number, told: readonly Told[], which: keyof typeof on) =>
  evaluateStay(stayOf(...told), on[which], calendar, hours(t));
const said = (t: number, told: readonly Told[], which: keyof typeof on) =>
  start(t, told, which).view.mayStart!.reasons.map((r) => `${r.word}: ${r.words}`);
const missing = (t: number, told: readonly Told[], which: keyof typeof on) =>
  start(t, told, which).view.mayStart!.notTaken;

const CALM: Partial<CriticalCareSigns> = {
  oxygenFraction: 0.3,
  meanPressure: 75,
  sedation: 0,
  vasoactive: 'none',
};
const WHOLE = { ...CALM, saturation: 97, breathing: 16, heartRate: 80, temperature: 37 };
const signs = (h: number, payload: Partial<CriticalCareSigns>, role: Role = 'nurse'): Told => ({
  type: 'critical-care-signs-recorded',
  at: h,
  role,
  id: `signs-${h}`,
  payload: { bars: [], ...payload },
});

describe('critical-care signs in "may we start"', () => {
  it('a drug that an aide saw raised since counts, though a nurse had it steady', () => {
    const raised = [
      checked(1),
      signs(2, { ...CALM, vasoactive: 'steady' }),
      signs(2.5, { vasoactive: 'new-or-raised' }, 'aide'),
    ];
    const within = DEFAULT_RULES.criticalCare.vasoactiveChangedHours.value;
    expect(said(3, raised, 'criticalCare')).toEqual([
      `not-now: critical care: vasoactive drug new or raised within ${within} h`,
    ]);
  });
  it('do not count on a ward that has not turned them on', () => {
    expect(said(3, [checked(1), signs(2, { sedation: -5, bars: ['femoral-sheath'] })], 'off')).toEqual([]);
    expect(missing(3, [checked(1)], 'off')).toEqual([]);
  });
  it('are asked for where they are on, the four that only the set has', () => {
    const names = ['oxygen fraction', 'mean pressure', 'sedation grade', 'vasoactive drugs'];
    expect(missing(3, [checked(1)], 'criticalCare')).toEqual(names.map((n) => `critical care: ${n}`));
    expect(missing(3, [checked(1), signs(2, CALM)], 'criticalCare')).toEqual([]);
    expect(said(3, [checked(1), signs(2, CALM)], 'criticalCare')).toEqual([]);
    expect(missing(3, [checked(1), signs(2, { ...CALM, sedation: undefined })], 'criticalCare')).toEqual([
      'critical care: sedation grade',
    ]);
  });
  it('give each reason with its entry and its time', () => {
    const view = start(3, [checked(1), signs(2, { ...CALM, sedation: -3 })], 'criticalCare').view.mayStart!;
    expect(view).toMatchObject({
      word: 'not-now',
      reasons: [
        {
          words: 'critical care: sedation grade -3 is below -2',
          limit: -2,
          source: DEFAULT_RULES.criticalCare.sedationBelow.source,
          takenAt: hours(2),
          facts: ['signs-2'],
        },
      ],
    });
  });
  it('that the ward limits know as well are readings like any other', () => {
    const told = [
      checked(1),
      signs(2, { ...CALM, saturation: 85, breathing: 33, heartRate: 115, temperature: 39 }),
    ];
    expect(said(3, told, 'criticalCare')).toEqual([
      'not-now: oxygen saturation 85 % is below 90 %',
      'not-now: breathing rate 33 is above 30',
      'not-now: critical care: oxygen saturation 85 % is below 90 %',
      'ask-first: heart rate 115 is 111 or more',
      'ask-first: temperature 39 °C is 38.5 or more',
      'ask-first: critical care: breathing rate 33 is above 30',
      'ask-first: critical care: temperature 39 °C is 38.5 or more',
    ]);
    const only = [
      {
        ...checked(1),
        ...check(
          'walk',
          1,
          {},
          { readings: well(1).filter((r) => r.kind === 'pressure' || r.kind === 'pain') },
        ),
      },
    ];
    expect(missing(3, [...only, signs(2, WHOLE)], 'criticalCare')).toEqual([]);
  });
  it('count sign by sign: a later entry without one leaves it standing', () => {
    const told = [checked(1), signs(2, { ...CALM, sedation: -3 }), signs(3, { oxygenFraction: 0.7 })];
    expect(said(4, told, 'criticalCare')).toEqual([
      'not-now: critical care: sedation grade -3 is below -2',
      'ask-first: critical care: oxygen fraction 0.7 is 0.6 or more',
    ]);
    expect(said(6, [...told, signs(5, { sedation: 0, oxygenFraction: 0.5 })], 'criticalCare')).toEqual([]);
  });
  it('by someone who may not free count only where they are stricter', () => {
    expect(
      said(4, [checked(1), signs(2, CALM), signs(3, { sedation: 3 }, 'aide')], 'criticalCare'),
    ).toHaveLength(1);
    expect(
      said(
        4,
        [checked(1), signs(2, { ...CALM, sedation: 3 }), signs(3, { sedation: 0 }, 'aide')],
        'criticalCare',
      ),
    ).toHaveLength(1);
    expect(missing(4, [checked(1), signs(3, CALM, 'aide')], 'criticalCare')[0]).toBe(
      'critical care: oxygen fraction (again, by a nurse or therapist)',
    );
  });
  it('that are too old are asked for again; beyond a limit they stand', () => {
    const told = [checked(1), signs(2, { ...CALM, meanPressure: 50 })];
    expect(start(14 - 1 / 60, told, 'criticalCare').nextChange).toBe(hours(14));
    expect(missing(14, told, 'criticalCare')).toContain('critical care: sedation grade (older than 12 h)');
    const ventilated = [checked(1), signs(2, { ...CALM, endExpiratory: 5 })];
    const again = 'critical care: end-expiratory pressure (older than 12 h)';
    expect(missing(14, told, 'criticalCare')).not.toContain(again);
    expect(missing(14, ventilated, 'criticalCare')).toContain(again);
    expect(said(14, told, 'criticalCare')[0]).toBe(
      'not-now: critical care: mean pressure 50 mmHg is 60 or less',
    );
  });
  it('a drug new or raised asks only, once two hours are over; the board is told when', () => {
    const told = [checked(1), signs(2, { ...CALM, vasoactive: 'new-or-raised' })];
    const before = start(3, told, 'criticalCare');
    expect(before.view.mayStart!.word).toBe('not-now');
    expect(before.nextChange).toBe(hours(4));
    expect(said(4, told, 'criticalCare')).toEqual([
      'ask-first: critical care: vasoactive drug running, ask by local policy',
    ]);
  });
  it('the own lower target of the mean pressure goes on for readings that do not repeat it', () => {
    const low = { ...CALM, meanPressure: 70, meanPressureTarget: 65 };
    const later = signs(3, { meanPressure: 62 });
    const words = 'not-now: critical care: mean pressure 62 mmHg is below the own target of 65';
    expect(said(4, [checked(1), signs(2, low), later], 'criticalCare')).toEqual([words]);
    expect(said(4, [checked(1), signs(2, CALM), later], 'criticalCare')).toEqual([]);
    const loosened = signs(2.5, { meanPressureTarget: 60, meanPressure: 70 }, 'aide');
    expect(said(4, [checked(1), signs(2, low), loosened, later], 'criticalCare')).toEqual([words]);
  });
  it('a bar stands until a whole set by a qualified person that does not name it', () => {
    const barred = [checked(1), signs(2, { ...CALM, bars: ['femoral-sheath', 'lying-prone'] })];
    const words = ['not-now: critical care: femoral sheath', 'not-now: critical care: lying prone'];
    expect(said(3, barred, 'criticalCare')).toEqual(words);
    expect(said(5, [...barred, signs(4, CALM)], 'criticalCare')).toEqual(words);
    expect(said(5, [...barred, checked(4)], 'criticalCare')).toEqual(words);
    expect(said(5, [...barred, signs(4, WHOLE, 'aide')], 'criticalCare')).toEqual(words);
    expect(said(5, [...barred, signs(4, { ...WHOLE, bars: ['lying-prone'] })], 'criticalCare')).toEqual(
      words.slice(1),
    );
    expect(said(5, [...barred, signs(4, WHOLE)], 'criticalCare')).toEqual([]);
    expect(said(5, [...barred, { ...signs(2, WHOLE), id: 'zz' }], 'criticalCare')).toEqual(words);
  });
});

describe('the early-warning score in "may we start" (Royal College of Physicians 2017: 7 an emergency review, 5 or one parameter at 3 an urgent one)', () => {
  const score = (h: number, total: number, { anyThree = false, role = 'nurse' as Role } = {}): Told => ({
    type: 'early-warning-recorded',
    at: h,
    role,
    id: `score-${h}`,
    payload: { score: total, anyThree, scale: 1 },
  });
  /** A check after it has answered the trigger that the score was. */
  const looked = (total: number, extra: object = {}) => [score(1, total, extra), checked(2)];

  it('is not looked at on a ward that has not turned it on', () => {
    expect(said(3, looked(9, { anyThree: true }), 'off')).toEqual([]);
  });
  it('is asked for where it is on', () => {
    expect(missing(3, [checked(2)], 'earlyWarning')).toEqual(['early-warning score']);
    expect(said(3, [checked(2)], 'earlyWarning')).toEqual(['ask-first: to take first: early-warning score']);
    expect(missing(3, looked(1), 'earlyWarning')).toEqual([]);
  });
  it.each([
    [4, {}, []],
    [5, {}, ['ask-first: early-warning score 5 is 5 or more']],
    [6, {}, ['ask-first: early-warning score 6 is 5 or more']],
    [7, {}, ['not-now: early-warning score 7 is 7 or more']],
    [3, { anyThree: true }, ['ask-first: early-warning score 3 with one parameter at 3']],
  ])('%d %j once a check has answered it', (total, extra, words) => {
    expect(said(3, looked(total, extra), 'earlyWarning')).toEqual(words);
  });
  it('gives its limit, its source, its time and its entry', () => {
    expect(start(3, looked(7), 'earlyWarning').view.mayStart!.reasons).toEqual([
      {
        word: 'not-now',
        words: 'early-warning score 7 is 7 or more',
        limit: 7,
        source: DEFAULT_RULES.earlyWarning.emergencyFrom.source,
        takenAt: hours(1),
        facts: ['score-1'],
      },
    ]);
    expect(start(3, looked(3, { anyThree: true }), 'earlyWarning').view.mayStart!.reasons).toMatchObject([
      { limit: 3, source: DEFAULT_RULES.earlyWarning.anyThree.source },
    ]);
  });
  it('is not now until a check has answered the trigger that it is', () => {
    expect(said(3, [checked(1), score(2, 5)], 'earlyWarning')).toEqual([
      'not-now: Early-warning score 5, 5 or more; not looked at since',
      'ask-first: early-warning score 5 is 5 or more',
    ]);
    expect(start(3, [checked(1), score(2, 5)], 'earlyWarning').view.mayStart!.reasons[0]!.source).toContain(
      'Royal College of Physicians',
    );
  });
  it('that is too old is asked for again; a good one counts no longer, a bad one stands unless a check came after it', () => {
    expect(start(13 - 1 / 60, looked(1), 'earlyWarning').nextChange).toBe(hours(13));
    expect(missing(13, looked(1), 'earlyWarning')).toContain('early-warning score (older than 12 h)');
    expect(said(13, looked(7), 'earlyWarning').filter((w) => w.includes('score 7'))).toEqual([]);
    const unanswered = [checked(1), score(2, 7)];
    expect(said(14, unanswered, 'earlyWarning')).toContain('not-now: early-warning score 7 is 7 or more');
  });
  it('by someone who may not free neither answers nor replaces a worse one', () => {
    expect(said(4, [...looked(7), score(3, 1, { role: 'aide' })], 'earlyWarning')).toEqual([
      'not-now: early-warning score 7 is 7 or more',
    ]);
    expect(missing(4, [checked(2), score(3, 1, { role: 'aide' })], 'earlyWarning')).toEqual([
      'early-warning score (again, by a nurse or therapist)',
    ]);
    expect(said(5, [...looked(7), score(3, 1)], 'earlyWarning')).toEqual([]);
  });
});
