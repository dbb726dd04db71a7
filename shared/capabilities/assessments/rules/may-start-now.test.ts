/** May we start, over whole stays: what was recorded in, the answer of the board out. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  correct,
  hold,
  hours,
  order,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { triggerKind, type TriggerKind } from '../../orders/values.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { joinStarts } from './may-start-now.ts';

const at = (h: number) => toIso(hours(h));
const pressure = (systolic: number, h: number, extra: object = {}): Reading => ({
  kind: 'pressure',
  posture: 'lying',
  systolic,
  diastolic: 35,
  at: at(h),
  ...extra,
});
const rate = (perMinute: number, h: number): Reading => ({ kind: 'heart-rate', perMinute, at: at(h) });
const oxygen = (saturation: number, h: number, litresPerMinute?: number): Reading => ({
  kind: 'oxygen',
  saturation,
  at: at(h),
  ...(litresPerMinute === undefined ? {} : { litresPerMinute }),
});
const breathing = (perMinute: number, h: number): Reading => ({ kind: 'breathing', perMinute, at: at(h) });
const temperature = (celsius: number, h: number): Reading => ({ kind: 'temperature', celsius, at: at(h) });
const pain = (outOfTen: number, h: number): Reading => ({ kind: 'pain', outOfTen, at: at(h) });
const well = (h: number): Reading[] => [
  pressure(120, h),
  rate(80, h),
  oxygen(97, h),
  breathing(16, h),
  temperature(37, h),
  pain(0, h),
];
/** A check that clears everything, with every sign taken, an hour after arrival. */
const checked = (h = 1, readings: Reading[] = well(h), extra: object = {}): Told => ({
  ...check('walk', h, {}, { readings, ...extra }),
  id: `check-${h}`,
});
const taken = (h: number, readings: Reading[], role: Role = 'nurse'): Told => ({
  ...session(h, { readings }),
  role,
  id: `walk-${h}`,
});

const start = (t: number, told: readonly Told[], rules: RulesDocument = DEFAULT_RULES) =>
  evaluateStay(stayOf(...told), { ...ward, rules }, calendar, hours(t));
const ask = (t: number, told: readonly Told[], rules?: RulesDocument) => start(t, told, rules).view.mayStart!;
const said = (t: number, told: readonly Told[], rules?: RulesDocument) =>
  ask(t, told, rules).reasons.map((r) => `${r.word}: ${r.words}`);

describe('may we start, on a ward with its default rules', () => {
  it('may start when every sign was taken and nothing stands against it', () => {
    expect(ask(2, [checked()])).toEqual({ word: 'may-start', reasons: [], notTaken: [] });
  });
  it('asks first with nothing recorded, and lists everything that was not taken', () => {
    const view = ask(2, []);
    expect(view.word).toBe('ask-first');
    expect(view.notTaken).toEqual([
      'blood pressure',
      'heart rate',
      'oxygen saturation',
      'breathing rate',
      'temperature',
      'pain',
      'waits for help, follows instructions',
    ]);
    expect(view.reasons.map((r) => r.words)).toEqual([
      'Arrived, not checked here yet',
      'not known whether the person waits for help: never alone',
      'not known whether the person follows instructions',
      'to take first: blood pressure, heart rate, oxygen saturation, breathing rate, temperature, pain',
    ]);
  });
  it('MAY-5 asks first for one sign that is missing: a gap is not a normal reading', () => {
    const view = ask(2, [checked(1, well(1).slice(1))]);
    expect(view.notTaken).toEqual(['blood pressure']);
    expect(view.reasons).toEqual([
      {
        word: 'ask-first',
        words: 'to take first: blood pressure',
        limit: DEFAULT_RULES.start.readingHours.value,
        source: DEFAULT_RULES.start.readingHours.source,
        takenAt: null,
        facts: [],
      },
    ]);
  });
  it('is not asked outside the staged check', () => {
    const comfort: Told = { type: 'scope-set', at: 1, payload: { scope: 'comfort' } };
    expect(start(2, [comfort]).view.mayStart).toBeNull();
  });
  it('says what stops before what asks', () => {
    const readings = [...well(1).slice(2), rate(120, 1), pressure(80, 1)];
    expect(said(2, [check('walk', 1, {}, { readings })])).toEqual([
      'not-now: systolic 80 mmHg is below 90',
      'ask-first: heart rate 120 is 111 or more',
    ]);
    expect(ask(2, [check('walk', 1, {}, { readings })]).word).toBe('not-now');
  });
});

describe('the reading that counts', () => {
  it('is the last of its kind, of a check or of a session, with its time, limit, source and entry', () => {
    const told = [checked(), taken(2, [breathing(34, 2)])];
    expect(ask(3, told).reasons).toEqual([
      {
        word: 'not-now',
        words: 'breathing rate 34 is above 30',
        limit: 30,
        source: DEFAULT_RULES.start.breathingAbove.source,
        takenAt: hours(2),
        facts: ['walk-2'],
      },
      expect.objectContaining({ words: expect.stringContaining('A stop limit was passed') }),
    ]);
    expect(said(5, [...told, taken(4, [breathing(16, 4)])])).not.toContain(
      'not-now: breathing rate 34 is above 30',
    );
  });
  it('goes by when it was taken, not by when the entry was', () => {
    expect(
      said(5, [checked(3, [...well(3).slice(1), pressure(85, 3)]), checked(4, [pressure(120, 2)])]),
    ).toEqual(['not-now: systolic 85 mmHg is below 90']);
  });
  it('is none that is timed ahead, until then', () => {
    const told = [checked(), taken(2, [rate(140, 2.75)])];
    const before = start(2.5, told);
    expect(before.view.mayStart!.reasons.map((r) => r.words)).not.toContain('heart rate 140 is above 130');
    expect(before.nextChange).toBe(hours(2.75));
    expect(said(2.75, told)).toContain('not-now: heart rate 140 is above 130');
  });
  it('is no standing pressure: that belongs to rising', () => {
    const standing = (systolic: number) => pressure(systolic, 1.2, { posture: 'standing', heartRate: 140 });
    expect(ask(2, [checked(1, [...well(1), standing(85)])]).word).not.toBe('not-now');
    expect(ask(2, [checked(1, [...well(1).slice(1), standing(120)])]).notTaken).toEqual(['blood pressure']);
  });
  it('takes the heart rate that came with a pressure, and the later of two', () => {
    const noRate = well(1).filter((r) => r.kind !== 'heart-rate');
    expect(said(2, [checked(1, [...noRate, pressure(120, 1, { heartRate: 115 })])])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(2, [checked(1, [...noRate, pressure(120, 1, { heartRate: 115 }), rate(80, 1.1)])]).word).toBe(
      'may-start',
    );
    expect(said(2, [checked(1, [...noRate, rate(80, 1), pressure(120, 1.1, { heartRate: 115 })])])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
  });
  it('of two of one instant is the stricter', () => {
    for (const two of [
      [pressure(120, 1.5), pressure(85, 1.5)],
      [pressure(85, 1.5), pressure(120, 1.5)],
    ]) {
      expect(ask(2, [checked(1, [...well(1), ...two])]).word).toBe('not-now');
    }
  });
  it('hears the pain before and after a session', () => {
    expect(said(3, [checked(), { ...session(2, { painBefore: 5 }), role: 'nurse' }])).toEqual([
      'ask-first: pain 5 of 10: offer relief, come back when it works',
    ]);
    const both = { ...session(2, { painBefore: 8, painAfter: 1, endedAt: at(2.5) }), role: 'nurse' as const };
    expect(ask(3, [checked(), both]).word).toBe('may-start');
    const worse = { ...session(2, { painBefore: 1, painAfter: 8, endedAt: at(2.5) }), role: 'aide' as const };
    expect(said(3, [checked(), worse])).toEqual(['ask-first: pain 8 of 10: relief first']);
    expect(ask(3, [checked(), worse]).reasons[0]!.takenAt).toBe(hours(2.5));
  });
});

describe('a reading that is too old (12 h: common practice, no source)', () => {
  it('is not used, and is named; the board is told when', () => {
    const told = [checked()];
    const fresh = start(13 - 1 / 60, told);
    expect(fresh.view.mayStart!.word).toBe('may-start');
    expect(fresh.nextChange).toBe(hours(13));
    const old = ask(13, told);
    expect(old.word).toBe('ask-first');
    expect(old.notTaken).toContain('blood pressure (older than 12 h)');
    expect(old.notTaken).toHaveLength(6);
    expect(old.reasons.at(-1)!.facts).toEqual(['check-1']);
  });
  it('beyond a limit stands until a newer one, and is asked for again', () => {
    const told = [checked(1, [...well(1).slice(1), pressure(85, 1)])];
    expect(said(14, told)[0]).toBe('not-now: systolic 85 mmHg is below 90');
    expect(ask(14, told).notTaken).toContain('blood pressure (older than 12 h)');
    expect(said(16, [...told, taken(15, [pressure(120, 15)])])).not.toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
  });
  it('beyond a limit is not answered by the check that it is from', () => {
    const readings = [...well(1).filter((r) => r.kind !== 'heart-rate'), rate(115, 1)];
    expect(said(14, [checked(1, readings)])).toContain('ask-first: heart rate 115 is 111 or more');
  });
  it('and beyond a limit no longer stands when a check cleared the start after it', () => {
    const bad = [checked(), taken(2, [rate(125, 2)])];
    const later = check('walk', 3, {}, { readings: [] });
    const words = 'ask-first: heart rate 125 is 111 or more';
    expect(said(13.9, [...bad, later])).toContain(words);
    expect(said(14, [...bad, later])).not.toContain(words);
    expect(said(14, bad)).toContain(words);
    const failed = check('clear', 3, { clear: { outcome: 'not-met' } }, { readings: [] });
    expect(said(14, [...bad, failed])).toContain(words);
  });
});

describe('a reading by someone who may not free', () => {
  it('counts where it is stricter', () => {
    expect(said(3, [checked(), taken(2, [rate(115, 2)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
  });
  it('counts where it is stricter than one of the same instant', () => {
    for (const id of ['a', 'z']) {
      expect(said(3, [checked(), { ...taken(1, [rate(115, 1)], 'aide'), id }])).toEqual([
        'ask-first: heart rate 115 is 111 or more',
      ]);
    }
    expect(said(3, [checked(), taken(1, [rate(115, 0.9)], 'aide')])).toEqual([]);
  });
  it('does not take the place of one beyond a limit', () => {
    const bad = checked(1, [...well(1).filter((r) => r.kind !== 'heart-rate'), rate(115, 1)]);
    expect(said(3, [bad, taken(2, [rate(80, 2)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(3, [bad, taken(2, [rate(80, 2)], 'nurse')]).word).toBe('may-start');
    expect(said(4, [checked(), taken(2, [rate(115, 2)], 'aide'), taken(3, [rate(80, 3)], 'aide')])).toEqual([
      'ask-first: heart rate 115 is 111 or more',
    ]);
    expect(ask(4, [checked(), taken(2, [rate(115, 2)], 'aide'), taken(3, [rate(80, 3)])]).word).toBe(
      'may-start',
    );
  });
  it('is not enough by itself, and neither renews one that is too old', () => {
    const gap = checked(1, well(1).slice(1));
    expect(ask(3, [gap, taken(2, [pressure(120, 2)], 'aide')]).notTaken).toEqual([
      'blood pressure (again, by a nurse or therapist)',
    ]);
    const renewed = ask(14, [checked(), taken(5, [pressure(120, 5)], 'aide')]);
    expect(renewed.notTaken).toContain('blood pressure (again, by a nurse or therapist)');
    expect(start(14, [checked(), taken(5, [pressure(120, 5)], 'aide')]).nextChange).toBeLessThanOrEqual(
      hours(17),
    );
    expect(ask(17, [checked(), taken(5, [pressure(120, 5)], 'aide')]).notTaken).toContain(
      'blood pressure (older than 12 h)',
    );
  });
});

describe("oxygen against the person's own target and the check before", () => {
  const target = (low: number, h: number, role: Role = 'nurse'): Told => ({
    ...order(h, { about: 'oxygen-target', low, high: 99 }, role),
    id: `target-${low}`,
  });
  it('stands in place of the ward limit, and is named with its order', () => {
    const told = [target(94, 0.5), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, told).reasons).toEqual([
      {
        word: 'not-now',
        words: 'oxygen saturation 93 % is below the own target of 94 %',
        limit: 94,
        source: "the person's own target, by order",
        takenAt: hours(1.1),
        facts: ['check-1', 'target-94'],
      },
    ]);
    expect(ask(2, [target(88, 0.5), checked(1, [...well(1), oxygen(89, 1.1)])]).word).toBe('may-start');
  });
  it('a lower target by someone who may not free does not count', () => {
    const told = [target(94, 0.4), target(88, 0.5, 'aide'), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, told).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
  });
  it('a first target by someone who may not free counts only above the ward limit of 90 %', () => {
    const below = [target(86, 0.5, 'aide'), checked(1, [...well(1), oxygen(89, 1.1)])];
    expect(said(2, below)).toEqual(['not-now: oxygen saturation 89 % is below 90 %']);
    const above = [target(94, 0.5, 'aide'), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, above).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
  });
  it('of two targets of one time the higher stands', () => {
    for (const both of [
      [target(94, 0.5), target(88, 0.5)],
      [target(88, 0.5), target(94, 0.5)],
    ]) {
      const told = [...both, checked(1, [...well(1), oxygen(93, 1.1)])];
      expect(ask(2, told).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
    }
  });
  it('asks first when more oxygen is given than at the entry before', () => {
    const flow = (litres: number, h: number) => checked(h, [...well(h), oxygen(97, h, litres)]);
    const more = 'ask-first: more oxygen than at the last check (2 to 3 litres a minute)';
    expect(ask(3, [flow(2, 1), flow(2, 2)]).word).toBe('may-start');
    expect(said(3, [flow(2, 1), flow(3, 2)])).toEqual([more]);
    expect(ask(3, [flow(2, 1), flow(3, 2)]).reasons[0]!.facts).toEqual(['check-2', 'check-1']);
    expect(ask(4, [flow(2, 1), flow(3, 2), flow(3, 3)]).word).toBe('may-start');
    expect(ask(2, [flow(3, 1)]).word).toBe('may-start');
    expect(ask(2, [checked(1, [...well(1), oxygen(97, 1, 2), oxygen(97, 1.1, 3)])]).word).toBe('may-start');
    expect(said(4, [flow(2, 1), flow(3, 2), checked(3)])).toEqual([more]);
  });
  it('by someone who may not free the flow counts only where it is more, and hides no rise', () => {
    const nurse = (litres: number, h: number) => taken(h, [oxygen(97, h, litres)]);
    const aide = (litres: number, h: number) => taken(h, [oxygen(97, h, litres)], 'aide');
    const rise = (from: number, to: number) =>
      `ask-first: more oxygen than at the last check (${from} to ${to} litres a minute)`;
    expect(said(5, [checked(), nurse(2, 2), aide(4, 3)])).toEqual([rise(2, 4)]);
    expect(said(5, [checked(), nurse(2, 2), aide(4, 3), nurse(4, 4)])).toEqual([rise(2, 4)]);
    expect(said(5, [checked(), nurse(2, 2), aide(1, 3)])).toEqual([]);
    expect(said(5, [checked(), nurse(4, 2), nurse(2, 3), aide(3, 4)])).toEqual([rise(2, 3)]);
  });
  it('a rise that is too old no longer asks when a check cleared the start after it', () => {
    const told = [taken(1, [oxygen(97, 1, 2)]), taken(2, [oxygen(97, 2, 3)]), check('walk', 3)];
    const rise = (t: number, all: Told[]) => said(t, all).some((w) => w.includes('more oxygen'));
    expect(rise(13.9, told)).toBe(true);
    expect(rise(14, told)).toBe(false);
    expect(rise(14, told.slice(0, 2))).toBe(true);
  });
});

describe('the stage "may we start" at the last check', () => {
  const finding = (...parts: string[]) => {
    const failed = check('clear', 2, { clear: { outcome: 'not-met' } }, { readings: [] });
    const payload = structuredClone(failed.payload) as {
      stages: { findings: { part: string; result: string }[] }[];
    };
    for (const f of payload.stages[0]!.findings) f.result = parts.includes(f.part) ? 'not-met' : 'met';
    return { ...failed, id: 'asleep', payload };
  };
  it('says each part that was not met, in the words of the protocol, until a later check meets it', () => {
    const told = [checked(), finding('wakes-to-voice', 'no-new-chest-pain')];
    expect(ask(3, told).reasons).toEqual(
      ['Wakes to voice and stays awake', 'No new chest pain'].map((words) => ({
        word: 'not-now',
        words: `${words}: not met at the last check`,
        limit: null,
        source: 'common practice, no source',
        takenAt: hours(2),
        facts: ['asleep'],
      })),
    );
    expect(ask(5, [...told, checked(4)]).word).toBe('may-start');
  });
  it('not met without a finding is said by the name of the stage', () => {
    const none = finding();
    (none.payload as { stages: { findings: unknown[] }[] }).stages[0]!.findings = [];
    expect(said(3, [checked(), none])).toEqual(['not-now: clear: not met at the last check']);
  });
  it('not met only for a reading is left to the readings', () => {
    const told = [checked(1, [...well(1), pressure(85, 1.1)]), taken(2, [pressure(120, 2)])];
    expect(ask(3, told).word).toBe('may-start');
  });
  it('comes from an own protocol of the ward in its own words', () => {
    const document = {
      id: 'birch',
      version: 1,
      name: 'Birch',
      source: 'ours',
      owner: 'ward',
      reviewBy: '2027-01-01',
      lowestWord: 'Low',
      stages: [
        {
          id: 'gate',
          word: null,
          says: 'Ready?',
          shows: 'clear',
          parts: [
            { id: 'calm', says: 'Is calm', sided: false, gate: 'required', source: 'our own source' },
            { id: 'hand', says: 'Lifts a hand', sided: true, gate: 'one-side', source: 'ours' },
            { id: 'tells', says: 'Tells a story', sided: false, gate: 'informs', source: 'ours' },
          ],
          securedBy: [],
          firstTimeSecured: false,
          symptomStops: true,
          oneLegRoute: false,
          source: 'the stage of ours',
        },
        {
          id: 'up',
          word: 'Up',
          says: 'Up',
          shows: 'upright',
          parts: [{ id: 'sits', says: 'Sits', sided: false, gate: 'required', source: 'ours' }],
          securedBy: [],
          firstTimeSecured: false,
          symptomStops: false,
          oneLegRoute: false,
          source: 'ours',
        },
      ],
      pressureSet: { lying: true, standingMinutes: [1], within: 0.5, source: 'ours' },
      toldApart: { exactMinutes: 1, aboutMinutes: 15, source: 'ours' },
    };
    const own = { ...ward, protocols: [{ id: 'birch', version: 1, document }] } as never;
    const gate = (findings: object[], extra: object = {}) => {
      const told: Told = {
        type: 'assessment-recorded',
        at: 2,
        payload: {
          protocol: { id: 'birch', version: 1 },
          depth: 'full',
          stages: [
            {
              stage: 'gate',
              outcome: 'met',
              how: 'free',
              people: 0,
              findings,
              symptom: false,
              at: at(2),
              ...extra,
            },
          ],
          readings: well(2),
          cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
          wears: [],
          answers: [],
          firstTimeUp: false,
        },
      };
      return evaluateStay(stayOf(told), own, calendar, hours(3)).view.mayStart!.reasons.map((r) => [
        r.words,
        r.source,
      ]);
    };
    const met = { result: 'met' };
    const not = { result: 'not-met' };
    expect(gate([{ part: 'calm', ...met }])).toEqual([]);
    expect(gate([{ part: 'calm', ...not }])).toEqual([
      ['Is calm: not met at the last check', 'our own source'],
    ]);
    const hands = (left: object, right: object) => [
      { part: 'hand', side: 'left', ...left },
      { part: 'hand', side: 'right', ...right },
    ];
    expect(gate([{ part: 'calm', ...met }, ...hands(met, not)])).toEqual([]);
    expect(gate([{ part: 'calm', ...met }, ...hands(not, not)])).toEqual([
      ['Lifts a hand: not met at the last check', 'ours'],
    ]);
    expect(
      gate([
        { part: 'calm', ...met },
        { part: 'tells', ...not },
      ]),
    ).toEqual([]);
    expect(gate([{ part: 'calm', ...met }], { symptom: true })).toEqual([
      ['A symptom at the start of the last check', 'the stage of ours'],
    ]);
  });
  it('asks first after a check that cannot be read and found less', () => {
    const unread = check(
      'clear',
      2,
      { clear: { outcome: 'not-met' } },
      { protocol: { id: 'nobodys', version: 9 } },
    );
    expect(said(3, [checked(), unread])).toEqual([
      'ask-first: Protocol nobodys version 9 is not known here: it has a stage not met, so nothing stays cleared',
    ]);
  });
});

describe('what is in force (common practice, no source)', () => {
  const record = (kind: TriggerKind, h: number) => ({ ...trigger(kind, h), id: 'trigger' });
  it.each(triggerKind.options.filter((k) => k !== 'early-warning-rise' && k !== 'arrival'))(
    'a trigger "%s" nobody has looked at asks first, or is not now where its row keeps the person in bed',
    (kind) => {
      const asksOnly: readonly TriggerKind[] = [
        'return-from-surgery',
        'return-from-dialysis',
        'sedation',
        'block-on',
        'block-off',
        'order-change',
        'attachment-change',
        'failed-attempt',
        'step-down-from-intensive-care',
        'asked-to-look-again',
        'board-wrong',
      ];
      const view = ask(3, [checked(), record(kind, 2)]);
      expect(view.word).toBe(asksOnly.includes(kind) ? 'ask-first' : 'not-now');
      expect(view.reasons).toMatchObject([
        {
          words: expect.stringMatching(/^[A-Z].*; not looked at since$/),
          facts: ['trigger'],
          source: 'common practice, no source',
        },
      ]);
      const pressureSet = { depth: 'full-with-pressure', answers: ['trigger'] };
      expect(ask(5, [checked(), record(kind, 2), checked(4, well(4), pressureSet)]).reasons).toEqual([]);
    },
  );
  it.each([
    ['walking', 'ask-first', 'hold on walking (waiting for review)'],
    ['standing', 'ask-first', 'hold on standing: up to the edge of the bed only (waiting for review)'],
    ['out-of-bed', 'not-now', 'hold on getting out of bed (waiting for review)'],
    ['raising-the-back', 'not-now', 'hold on raising the back (waiting for review)'],
    ['all-including-turning', 'not-now', 'hold on all moves, turning too (waiting for review)'],
  ] as const)('a hold on %s is %s', (scope, word, words) => {
    const told = [checked(), hold(2, scope, 4, { id: 'held' })];
    expect(ask(3, told).reasons).toEqual([
      { word, words, limit: null, source: 'the hold on this stay', takenAt: null, facts: ['held'] },
    ]);
    expect(said(4, told)).toEqual([`${word}: ${words}; HOLD REVIEW DUE`]);
  });
  it('an order that keeps the person in bed or at its edge is said; one that only limits is not', () => {
    const most = (value: string) =>
      said(4, [checked(), order(2, { about: 'activity', most: value }), checked(3)]).filter((w) =>
        w.includes('order:'),
      );
    expect(most('bed')).toEqual(['not-now: order: stays in bed']);
    expect(most('edge-of-bed')).toEqual(['ask-first: order: up to the edge of the bed only']);
    for (const value of ['chair', 'stand', 'walk', 'no-limit']) {
      expect(most(value)).toEqual([]);
    }
  });
  it.each([
    ['urinary-catheter', 'nobody', false, 'urinary catheter: nobody disconnects it'],
    ['chest-drain', 'nurse', true, 'chest drain: needs a person to itself; a nurse disconnects it'],
    ['oxygen-cylinder', 'anyone-trained', false, 'oxygen cylinder: anyone trained disconnects it'],
    ['iv-line', 'nurse', false, null],
    ['oxygen-wall', 'anyone-trained', false, null],
  ])('an attachment: %s that %s disconnects', (kind, disconnects, needsOwnPerson, words) => {
    const payload = { attachment: 'a1', kind, disconnects, needsOwnPerson };
    const told = [{ type: 'attachment-added', at: 0.5, id: 'attached', payload }, checked()];
    const view = ask(2, told);
    expect(view.reasons.map((r) => [r.word, r.words, r.facts])).toEqual(
      words ? [['ask-first', words, ['attached']]] : [],
    );
  });
  it.each([
    ['no', 'yes', 'does not wait for help: never alone'],
    ['varies', 'yes', 'waits for help only sometimes: never alone'],
    ['yes', 'no', 'does not follow instructions: ask who should be there and how to ask'],
    ['yes', 'yes', null],
  ])('waits for help %s, follows instructions %s', (waitsForHelp, followsInstructions, words) => {
    const view = ask(2, [checked(1, well(1), { cooperation: { waitsForHelp, followsInstructions } })]);
    expect(view.reasons.map((r) => [r.word, r.words, r.takenAt, r.facts])).toEqual(
      words ? [['ask-first', words, hours(1), ['check-1']]] : [],
    );
  });
  it('the worst answer of the last 24 h decides, by the entry that gave it', () => {
    const told = [
      checked(1, well(1), { cooperation: { waitsForHelp: 'no', followsInstructions: 'yes' } }),
      checked(2),
    ];
    expect(ask(3, told).reasons).toMatchObject([
      { words: 'does not wait for help: never alone', facts: ['check-1'] },
    ]);
  });
});

describe('a fact that may not free', () => {
  it('entered late, while something since is open, does not start anybody: both sides are said', () => {
    const bad = taken(2, [pressure(85, 2)]);
    const good = correct(6, 'walk-2', taken(2, [pressure(120, 2)]));
    const open = hold(4, 'walking', 90);
    expect(said(7, [checked(), bad, { ...good, recorded: 6.5 }])).not.toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
    expect(said(7, [checked(), bad, open, { ...good, recorded: 6.5 }])).toContain(
      'not-now: systolic 85 mmHg is below 90',
    );
  });
  it('of two views the stricter stands, each reason once with the facts of both', () => {
    const reason = (word: 'not-now' | 'ask-first', words: string, fact: string) => ({
      word,
      words,
      limit: null,
      source: 'ours',
      takenAt: null,
      facts: [fact as never],
    });
    const a = { word: 'ask-first' as const, reasons: [reason('ask-first', 'x', 'e1')], notTaken: ['pain'] };
    const b = {
      word: 'not-now' as const,
      reasons: [reason('ask-first', 'x', 'e2'), reason('not-now', 'y', 'e3')],
      notTaken: ['pain', 'temperature'],
    };
    const joined = {
      word: 'not-now',
      reasons: [reason('not-now', 'y', 'e3'), { ...reason('ask-first', 'x', 'e1'), facts: ['e1', 'e2'] }],
      notTaken: ['pain', 'temperature'],
    };
    expect(joinStarts(a, b)).toEqual(joined);
    expect(joinStarts(b, a).word).toBe('not-now');
    const stop = { word: 'not-now' as const, reasons: [reason('not-now', 'x', 'e4')], notTaken: [] };
    expect(joinStarts(stop, a)).toMatchObject({ word: 'not-now', reasons: [{ word: 'not-now' }] });
    expect(joinStarts(a, stop)).toMatchObject({ word: 'not-now', reasons: [{ word: 'not-now' }] });
  });
});
