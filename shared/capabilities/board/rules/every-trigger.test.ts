/**
 * Each trigger of users-job.md 3a, one by one: what it does to trust, to the due time and to help,
 * and what answers it. Hours and rows are common practice, no source, to be signed by the ward.
 */
import { describe, expect, it } from 'vitest';
import { TRIGGER_HELP } from '../../handling/rules/trigger-help.ts';
import { people, type Task } from '../../handling/values.ts';
import { TRIGGER_WORDS } from '../../orders/rules/triggers.ts';
import { triggerKind, type TriggerKind } from '../../orders/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { TaskPlan } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { before, due, seen } from './due.testkit.ts';
import {
  check,
  confirm,
  hours,
  order,
  retract,
  session,
  stayOf,
  trigger,
  type Told,
} from './history.testkit.ts';

/** Weight known and walking cleared, so that there is help to raise: checked at 1 h, valid until 13 h. */
const weight: Told = { type: 'weight-recorded', at: 1, payload: { weight: { kg: 70, how: 'measured' } } };
const walks = { ...check('walk', 1), id: 'walks' };
const drain: Told = {
  type: 'attachment-added',
  at: 2,
  id: 'it',
  payload: { attachment: 'd', kind: 'urinary-catheter', disconnects: 'nurse', needsOwnPerson: false },
};
const asIt = (told: Told): Told => ({ ...told, id: 'it' });
const recorded = (kind: TriggerKind): Told => asIt(trigger(kind, 2));

/** "stay put": everything out of bed is held; "no feet": standing and walking are; "one more": nothing is. */
type Until = 'stay put' | 'no feet' | 'one more';
interface Row {
  readonly kind: TriggerKind;
  /** As it comes about, at 2 h. */
  readonly told: Told;
  /** Hours within which somebody looks, also without a move; null = before the next move only. */
  readonly within: number | null;
  readonly until: Until;
  /** What it says of itself; by default the words of its kind. */
  readonly says?: string;
  /** A nurse's confirm of the plan answers it, too. */
  readonly light?: boolean;
}
const row = (kind: TriggerKind, within: number | null, until: Until, told = recorded(kind)): Row => ({
  kind,
  told,
  within,
  until,
});
const ROWS: readonly Row[] = [
  row('return-from-surgery', null, 'one more'),
  row('return-from-dialysis', null, 'one more'),
  row('sedation', null, 'one more'),
  row('block-on', null, 'no feet'),
  row('block-off', null, 'one more'),
  row('fall', 1, 'stay put'),
  row('fall', 1, 'stay put', asIt(session(2, { events: ['lowered-to-floor'] }))),
  row('faint', 1, 'stay put'),
  row('seizure', 1, 'stay put'),
  row('low-glucose', 1, 'stay put'),
  row('bleed', 1, 'stay put'),
  row('transfusion', 1, 'stay put'),
  row('new-symptom', 1, 'stay put'),
  row('new-confusion', 1, 'stay put'),
  row('order-change', null, 'one more', asIt(order(2, { about: 'activity', most: 'no-limit' }))),
  { ...row('attachment-change', null, 'one more', drain), light: true },
  row('sheath-out', 1, 'stay put'),
  row('suspected-clot', 1, 'stay put'),
  row('failed-attempt', 12, 'one more', asIt(session(2, { outcome: 'stopped' }))),
  ...['near-fall', 'line-pulled', 'low-oxygen', 'pain', 'distress'].map((event) => ({
    ...row('failed-attempt', 12, 'one more', asIt(session(2, { events: [event] }))),
    says: `Something went wrong in a session: ${event.replaceAll('-', ' ')}`,
  })),
  row('step-down-from-intensive-care', 4, 'one more'),
  { ...row('asked-to-look-again', null, 'one more'), light: true },
  { ...row('board-wrong', 1, 'one more'), light: true },
];
const HELD: Readonly<Record<Until, readonly Task[]>> = {
  'stay put': ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk'],
  'no feet': ['stand', 'walk'],
  'one more': [],
};
const answer = check('walk', 2.5, {}, { depth: 'full-with-pressure' });
const named = (r: Row): string => `${r.kind} (${r.told.type})`;
const each = ROWS.map((r) => [named(r), r] as const);

const plans = (view: StayView): readonly TaskPlan[] => [...view.plan!.day, ...view.plan!.night];
const count = (p: TaskPlan): number => people.options.indexOf(p.people);
const most = people.options.length - 1;

describe('every trigger', () => {
  it('is in this table, but for the arrival and the early-warning score, which stand below', () => {
    expect(triggerKind.options.filter((kind) => !ROWS.some((r) => r.kind === kind))).toEqual([
      'arrival',
      'early-warning-rise',
    ]);
  });

  it.each(each)('%s ends trust at once and says so', (_name, { kind, told, says }) => {
    const words = says ?? TRIGGER_WORDS[kind];
    const view = seen(stayOf(weight, walks, told), hours(2));
    expect(seen(stayOf(weight, walks, told), hours(before(2))).trust.state).toBe('current');
    expect(view.trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'it', kind, at: hours(2), words }],
      because: [{ rule: 'trust/trigger', facts: ['it'], words: `${words}, 24 Oct 20:00` }],
    });
    expect(view.tier.word).toBe('Walk');
  });

  it.each(each)('%s asks for a look before the next move, and by its time', (_name, r) => {
    const stay = stayOf(weight, walks, r.told);
    const waits = /surgery|dialysis|sedation|block/.test(r.kind);
    const end = Math.min(r.within === null ? Infinity : 2 + r.within, waits ? 14 : 13);
    expect(due(stay, 2)).toMatchObject({ state: 'at-next-move', because: [{ facts: ['it'] }] });
    expect(due(stay, before(end)).state).toBe('at-next-move');
    expect(due(stay, end)).toMatchObject({ state: 'overdue', at: hours(end) });
    const byItsTime = r.within !== null && 2 + r.within < 13;
    const rule = byItsTime ? 'due/trigger-limit' : waits ? 'due/without-a-move' : 'due/validity';
    expect(due(stay, end).because[0]).toMatchObject({
      rule,
      facts: [rule === 'due/validity' ? 'walks' : 'it'],
    });
    expect(DEFAULT_RULES.validity.triggers[r.kind]!.value).toBe(r.within);
  });

  it.each(each)(
    'DUE-1 %s raises help by its own row, and never lowers any',
    (_name, { kind, told, until }) => {
      const was = plans(seen(stayOf(weight, walks), hours(2)));
      const now = plans(seen(stayOf(weight, walks, told), hours(2)));
      const { holds, more } = TRIGGER_HELP[kind];
      expect(holds).toEqual(expect.arrayContaining([...HELD[until]]));
      expect(holds.length > 0).toBe(until !== 'one more');
      expect(more).toBe(1);
      expect(now.map((p) => p.task)).toEqual(was.map((p) => p.task));
      for (const [i, p] of now.entries()) {
        expect([p.task, p.hold]).toEqual([p.task, was[i]!.hold || holds.includes(p.task)]);
        expect(count(p)).toBeGreaterThanOrEqual(Math.min(most, count(was[i]!) + more));
        expect(p.because).toContainEqual(expect.objectContaining({ rule: `trigger/${kind}`, facts: ['it'] }));
      }
    },
  );

  it.each(each)(
    '%s is answered by a check that goes as far, not by an aide’s check or a session',
    (_name, r) => {
      const after = (...told: readonly Told[]) =>
        seen(stayOf(weight, walks, r.told, ...told), hours(3)).trust.openTriggers.map((o) => o.event);
      expect(after(answer)).toEqual([]);
      expect(after({ ...answer, role: 'aide' })).toEqual(['it']);
      expect(after(session(2.5))).toEqual(['it']);
      expect(after({ ...answer, at: 1.5 })).toEqual(['it']);
      expect(after(confirm(2.5, 'walks'))).toEqual(r.light ? [] : ['it']);
      expect(after(confirm(2.5, 'walks', 'aide'))).toEqual(['it']);
    },
  );

  it.each(each)('%s: a check answers just this one, not a later one', (_name, r) => {
    const later = { ...trigger('new-symptom', 2.75), id: 'later' };
    const view = seen(stayOf(weight, walks, r.told, answer, later), hours(3));
    expect(view.trust.openTriggers.map((o) => o.event)).toEqual(['later']);
  });
});

describe('the arrival', () => {
  it('leaves nothing known and asks for two people and a lift until the first check', () => {
    const view = seen(stayOf(weight), hours(2));
    expect(view).toMatchObject({
      trust: { state: 'not-known', openTriggers: [{ kind: 'arrival' }] },
      due: { state: 'not-due', at: hours(4) },
      checkBeforeMoving: true,
    });
    expect(view.plan!.day.find((p) => p.task === 'bed-chair')).toMatchObject({
      people: 'two',
      aid: 'sling-lift',
    });
    expect(seen(stayOf(weight, walks), hours(2)).trust).toMatchObject({ state: 'current', openTriggers: [] });
  });
  it('is answered by no confirm, and raises no row of its own: not known asks for more', () => {
    expect(seen(stayOf(weight, confirm(1, 'none')), hours(2)).trust.state).toBe('not-known');
    expect(TRIGGER_HELP.arrival).toMatchObject({ holds: [], more: 0 });
  });
});

describe('a rise of the early-warning score', () => {
  const { earlyWarning } = DEFAULT_RULES;
  const on = { ...DEFAULT_RULES, earlyWarning: { ...earlyWarning, on: { ...earlyWarning.on, value: true } } };
  const score: Told = {
    type: 'early-warning-recorded',
    at: 2,
    id: 'it',
    payload: { score: 7, anyThree: false, scale: 1 },
  };
  const risen = stayOf(weight, walks, score);
  it('is a trigger where the ward turned it on, in the words that say what rose', () => {
    const { trust } = seen(risen, hours(2), on);
    expect(trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'it', kind: 'early-warning-rise', at: hours(2) }],
    });
    expect(trust.openTriggers[0]!.words).toMatch(/^Early-warning score 7/);
    expect(seen(risen, hours(2)).trust.openTriggers).toEqual([]);
  });
  it('keeps the person where they are, and is looked at within 1 h', () => {
    const { holds, more } = TRIGGER_HELP['early-warning-rise'];
    expect(holds).toEqual(expect.arrayContaining([...HELD['stay put']]));
    expect(more).toBe(1);
    const now = plans(seen(risen, hours(2), on));
    expect(now.filter((p) => p.hold).map((p) => p.task)).toEqual(expect.arrayContaining([...holds]));
    expect(due(risen, before(3), on).state).toBe('at-next-move');
    expect(due(risen, 3, on)).toMatchObject({
      state: 'overdue',
      at: hours(3),
      because: [{ rule: 'due/trigger-limit', facts: ['it'] }],
    });
  });
  it('is answered by a check that goes as far, by no confirm and by no lower score', () => {
    const after = (...told: readonly Told[]) =>
      seen(stayOf(weight, walks, score, ...told), hours(3), on).trust.openTriggers.map((o) => o.event);
    expect(after(answer)).toEqual([]);
    expect(after(check('upright', 2.5))).toEqual(['it']);
    expect(after(confirm(2.5, 'walks'))).toEqual(['it']);
    expect(
      after({ ...score, id: 'lower', at: 2.5, payload: { score: 1, anyThree: false, scale: 1 } }),
    ).toEqual(['it']);
  });
});

describe('a withdrawn trigger', () => {
  it('leaves a request to look again, which a nurse’s confirm answers', () => {
    const withdrawn = [weight, walks, recorded('fall'), retract(2.25, 'it')];
    expect(seen(stayOf(...withdrawn), hours(2.5)).trust.openTriggers).toMatchObject([
      { kind: 'asked-to-look-again' },
    ]);
    expect(seen(stayOf(...withdrawn, confirm(2.75, 'walks')), hours(3)).trust.state).toBe('current');
  });
});
