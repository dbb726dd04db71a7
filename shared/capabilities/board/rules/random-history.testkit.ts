/** Random streams of stays for property tests: any author, any time, late and wrong entries too. */
import * as fc from 'fast-check';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { recordedTriggerKind } from '../../orders/values.ts';
import {
  begun,
  check,
  confirm,
  confirmation,
  correct,
  cosignature,
  hold,
  hours,
  notDone,
  onOwn,
  order,
  retract,
  session,
  trigger,
  unconfirmed,
  type StageId,
  type Told,
} from './history.testkit.ts';

const STAGES = DEFAULT_PROTOCOL.stages;
/** Quarters of an hour, so that instants often coincide. */
const when = fc.integer({ min: 0, max: 4 * 80 }).map((q) => q / 4);
const anyRole = fc.constantFrom<Role>('aide', 'nurse', 'therapist', 'charge-nurse', 'records');
/** Who says it: now and then somebody whose name nobody had checked, and agency staff. */
interface Says {
  readonly role: Role;
  readonly mark: 'unconfirmed' | 'cosign' | null;
}
const anyone: fc.Arbitrary<Says> = fc.record({
  role: anyRole,
  mark: fc.constantFrom(null, null, null, 'unconfirmed', 'cosign'),
});
function saidBy(one: Told, { role, mark }: Says): Told {
  if (mark === 'unconfirmed') return unconfirmed({ ...one, role });
  return mark === null ? { ...one, role } : { ...one, role, source: { kind: 'person', cosign: 'agency' } };
}
const stageIds = STAGES.map((s) => s.id as StageId);

const checks = fc
  .record({
    last: fc.constantFrom(...stageIds),
    fails: fc.boolean(),
    secured: fc.boolean(),
    symptom: fc.boolean(),
    waits: fc.constantFrom('yes', 'no', 'varies'),
    depth: fc.constantFrom('full', 'full-with-pressure'),
    firstTimeUp: fc.boolean(),
    at: when,
  })
  .map(({ last, fails, secured, symptom, waits, depth, firstTimeUp, at }) =>
    check(
      last,
      at,
      {
        [last]: {
          outcome: fails ? 'not-met' : 'met',
          how: secured ? 'secured' : 'free',
          symptom,
        },
      },
      { depth, firstTimeUp, cooperation: { waitsForHelp: waits, followsInstructions: 'yes' } },
    ),
  );

const sessions = fc.oneof(
  fc
    .record({
      outcome: fc.constantFrom('done', 'part', 'stopped'),
      activity: fc.constantFrom('back-raised', 'edge-sit', 'chair', 'walk', 'toilet'),
      metres: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
      events: fc.subarray(['dizzy', 'lowered-to-floor', 'pain'], { maxLength: 1 }),
      firstTimeUp: fc.boolean(),
      minutes: fc.integer({ min: 0, max: 40 }),
      left: fc.constantFrom(undefined, 'bed', 'chair', 'toilet-with-staff'),
      backToBed: fc.option(when, { nil: undefined }),
      saturation: fc.option(fc.constantFrom(80, 96), { nil: undefined }),
      at: when,
    })
    .map(({ activity, at, minutes, metres, left, backToBed, saturation, ...rest }) =>
      session(at, {
        ...rest,
        ...(left ? { left } : {}),
        ...(backToBed === undefined ? {} : { backToBedBy: toIso(hours(backToBed)) }),
        activities: [activity],
        endedAt: toIso(hours(at + minutes / 60)),
        ...(metres === undefined ? {} : { metres }),
        ...(saturation === undefined
          ? {}
          : { readings: [{ kind: 'oxygen', saturation, at: toIso(hours(at)) }] }),
      }),
    ),
  when.map((at) => notDone(at, 'said-no')),
);

const orders = fc
  .record({
    at: when,
    about: fc.constantFrom(
      { about: 'activity', most: 'bed' },
      { about: 'activity', most: 'chair' },
      { about: 'activity', most: 'no-limit' },
      { about: 'weight-bearing', limb: 'left-leg', bears: 'none' },
      { about: 'weight-bearing', limb: 'left-leg', bears: 'unrestricted' },
      { about: 'precaution', precaution: 'hip', on: true },
      { about: 'precaution', precaution: 'hip', on: false },
      { about: 'precaution', precaution: 'spine', on: true },
      { about: 'oxygen-target', low: 88, high: 92 },
    ),
  })
  .map(({ at, about }) => order(at, about));

const visit = fc.constantFrom('visit-1', 'visit-2');
const visits = fc.oneof(
  fc.tuple(visit, when, fc.integer({ min: 1, max: 8 })).map(([id, from, quarters]) => ({
    type: 'visit-taken',
    payload: {
      visit: id,
      by: 'staff-aide',
      from: toIso(hours(from)),
      until: toIso(hours(from + quarters / 4)),
    },
  })),
  visit.map((id) => ({ type: 'visit-handed-over', payload: { visit: id, to: 'staff-nurse' } })),
  visit.map((id) => ({ type: 'visit-given-back', payload: { visit: id, reason: 'called-away' } })),
);
/** What stands beside the plan and changes none of it. */
export const besideThePlan: fc.Arbitrary<Told> = fc
  .tuple(
    fc.oneof(
      fc.boolean().map((on) => ({ type: 'isolation-set', payload: { on } })),
      fc.option(when).map((h) => ({
        type: 'leaving-expected',
        payload: { at: h === null ? null : toIso(hours(h)) },
      })),
      fc
        .constantFrom({}, { line: { ref: 'text-2' } })
        .map((payload) => ({ type: 'therapist-line-set', payload })),
      visits,
    ),
    when,
  )
  .map(([one, at]): Told => ({ ...one, at }));

/** One entry that speaks of no other. */
export const anyEntry: fc.Arbitrary<Told> = fc.oneof(
  { weight: 4, arbitrary: checks },
  { weight: 3, arbitrary: sessions },
  { weight: 2, arbitrary: orders },
  {
    weight: 3,
    arbitrary: fc
      .tuple(
        fc.oneof(
          fc.constantFrom('fall', 'sedation', 'return-from-surgery', 'faint', 'asked-to-look-again'),
          fc.constantFrom(...recordedTriggerKind.options),
        ),
        when,
      )
      .map(([kind, at]) => trigger(kind, at)),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('walking', 'out-of-bed', 'all-including-turning'), when, when)
      .map(([scope, at, review]) => hold(at, scope, review)),
  },
  when.map((at) => ({
    type: 'hold-renewed',
    at,
    payload: { hold: 'hold-1', reviewAt: toIso(hours(at + 6)) },
  })),
  when.map((at) => onOwn(at)),
  when.map((at) => ({ type: 'on-own-removed', at, payload: {} })),
  when.map((at) => ({ type: 'seen-walking', at, payload: { walkingSupport: 'frame' } })),
  when.map((at) => ({
    type: 'attachment-added',
    at,
    payload: { attachment: 'drain', kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: true },
  })),
  when.map((at) => ({
    type: 'attachment-removed',
    at,
    payload: { attachment: 'drain', kind: 'chest-drain' },
  })),
  fc
    .tuple(when, fc.integer({ min: 40, max: 180 }), fc.constantFrom('measured', 'estimated'))
    .map(([at, kg, how]): Told => ({ type: 'weight-recorded', at, payload: { weight: { kg, how } } })),
  fc.tuple(when, fc.constantFrom('walks', 'wheelchair', 'bed')).map(([at, moves]): Told => ({
    type: 'usual-way-recorded',
    at,
    payload: { usual: { moves, transfers: 'alone', stairs: 'no' } },
  })),
  when.map((at) => ({ type: 'went-off-ward', at, payload: { reason: 'test' } })),
  when.map((at) => ({ type: 'came-back', at, payload: {} })),
  when.map((at) => ({ type: 'asleep-seen', at, payload: {} })),
  fc
    .tuple(when, fc.constantFrom('staged', 'comfort'))
    .map(([at, scope]): Told => ({ type: 'scope-set', at, payload: { scope } })),
  when.map((at) => ({ type: 'goal-set', at, payload: { goal: { activity: 'chair', timesUp: 2 } } })),
  fc.tuple(when, fc.integer({ min: 0, max: 20 }), fc.boolean()).map(([at, score, anyThree]): Told => ({
    type: 'early-warning-recorded',
    at,
    payload: { score, anyThree, scale: 1 },
  })),
  fc
    .tuple(when, fc.constantFrom(85, 95), fc.constantFrom(-3, 0, 3))
    .map(([at, saturation, sedation]): Told => ({
      type: 'critical-care-signs-recorded',
      at,
      payload: { saturation, sedation, bars: [] },
    })),
  fc
    .tuple(when, fc.boolean())
    .map(([at, on]): Told => ({ type: 'walking-measures-switched', at, payload: { on } })),
  when.map((at) => ({
    type: 'walking-measured',
    at,
    payload: { measure: { kind: 'up-and-go', seconds: 14, support: 'frame' } },
  })),
  besideThePlan,
);

/** What may be said about an earlier entry, chosen by `back`: how many entries ago. */
const spoken = fc.record({
  verb: fc.constantFrom(
    'correct',
    'retract',
    'confirm',
    'end-hold',
    'answer',
    'add',
    'stand-by',
    'stand-by',
    'sign',
  ),
  back: fc.integer({ min: 1, max: 12 }),
  at: when,
  by: checks,
  moved: fc.option(when, { nil: undefined }),
});

const step = fc.tuple(
  fc.oneof({ weight: 4, arbitrary: anyEntry.map((of) => ({ of })) }, { weight: 1, arbitrary: spoken }),
  anyone,
);

/** The same, each recorded a minute after it occurred or, told after a later one, after that: as a log records. */
export function asRecorded(told: readonly Told[]): readonly Told[] {
  let recorded = 0;
  return told.map((one) => {
    recorded = Math.max(recorded + 1 / 3600, (one.at ?? 0) + 1 / 60);
    return { ...one, recorded };
  });
}

/** One more entry, of itself or about one of those told; by anyone, of any time. */
export const oneMore = (told: readonly Told[]): fc.Arbitrary<Told> =>
  step.map(([one, says]) => ({ ...stepOf(told, one, says), id: 'added' }));

type Step = typeof step extends fc.Arbitrary<readonly [infer S, Says]> ? S : never;
function stepOf(told: readonly Told[], one: Step, says: Says): Told {
  if ('of' in one) return saidBy(one.of, says);
  if (one.verb === 'stand-by') return standBy(told, one, says);
  return saidBy(spokenOf(one.verb, told[Math.max(0, told.length - one.back)]!, one), says);
}

/** Most confirmations are of an entry that waits for one, by the person it names; some are of anything, by anyone. */
function standBy(told: readonly Told[], { at, back }: { at: number; back: number }, says: Says): Told {
  const waiting = told.filter((one) => one.source?.unconfirmed);
  const target = waiting[waiting.length - 1 - (back % Math.max(1, waiting.length))];
  if (!target || back % 6 === 0) {
    return saidBy(confirmation(at, told[Math.max(0, told.length - back)]!.id!), says);
  }
  const role = target.staff!.replace('staff-', '') as Role;
  return { ...confirmation(at, target.id!, role), role };
}

/**
 * A stay in which little happened: weighed and seen walking free with nobody helping, then a few entries
 * by anyone. Here what one entry asks for is not hidden behind what others ask for already.
 */
export const calm: fc.Arbitrary<readonly Told[]> = fc
  .array(fc.tuple(anyEntry, anyone), { minLength: 1, maxLength: 4 })
  .map((entries) => [
    { ...begun(), id: 'e00000' },
    { type: 'weight-recorded', at: 0, id: 'e00001', payload: { weight: { kg: 70, how: 'measured' } } },
    { ...walksAlone, id: 'e00002' },
    ...entries.map(([one, says], n): Told => ({ ...saidBy(one, says), id: `f${n}` })),
  ]);
const free = check('walk', 0.25);
const stagesOf = (free.payload as { stages: object[] }).stages;
const walksAlone: Told = {
  ...free,
  payload: { ...(free.payload as object), stages: stagesOf.map((s) => ({ ...s, people: 0 })) },
};

/** A random stay's stream, as events in the order told: any author, any time, also late and wrong. */
export const histories: fc.Arbitrary<readonly Told[]> = fc
  .array(step, { minLength: 1, maxLength: 40 })
  .map((steps) => {
    const out: Told[] = [{ ...begun(), id: 'e00000' }];
    for (const [one, says] of steps) {
      out.push({ ...stepOf(out, one, says), id: `e${String(out.length).padStart(5, '0')}` });
    }
    return out;
  });

function spokenOf(
  verb: string,
  target: Told,
  { at, by, moved }: { at: number; by: Told; moved: number | undefined },
): Told {
  const id = target.id!;
  switch (verb) {
    case 'correct': {
      const again = target.type === 'assessment-recorded' ? by : target;
      if (target.type === 'correction-made') return retract(at, id);
      return correct(at, id, again, 'nurse', moved);
    }
    case 'retract':
      return retract(at, id);
    case 'confirm':
      return confirm(at, id);
    case 'end-hold':
      return { type: 'hold-ended', at, payload: { hold: 'hold-1', placedBy: id } };
    case 'answer':
      return { ...by, payload: { ...(by.payload as object), answers: [id] } };
    case 'sign':
      return cosignature(at, id);
    default:
      return {
        type: 'addendum-made',
        at,
        payload: { target: id, text: { ref: 'text-1' }, reason: 'unclear' },
      };
  }
}
