import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { assessment, hours, upTo } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/protocol.ts';
import { securedWith } from '../../assessments/values.ts';
import type { Finding, StageRecord } from '../../assessments/values.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { holdScope, precaution, triggerKind } from '../../orders/values.ts';
import { attachmentKind } from '../../stays/values.ts';
import { bearsAsAWhole } from './capability.ts';
import { aidCovers, atLeast } from './help.ts';
import { planStay } from './plan.ts';
import { hold, planInput, stated, trigger, trust } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

type Role = 'nurse' | 'therapist' | 'aide';

const findings = (stage: string): fc.Arbitrary<Finding[]> => {
  const parts = DEFAULT_PROTOCOL.stages.find((s) => s.id === stage)!.parts;
  const all = parts.flatMap((p) =>
    p.sided ? (['left', 'right'] as const).map((side) => ({ part: p.id, side })) : [{ part: p.id }],
  );
  return fc
    .tuple(
      ...all.map(() =>
        fc.constantFrom('met', 'met', 'met', 'met', 'not-met', 'not-tested', 'not-applicable'),
      ),
    )
    .map((results) =>
      all.map((f, i): Finding => {
        const result = results[i] as Finding['result'];
        return {
          ...f,
          result,
          ...(result === 'not-tested' ? { reason: 'pain' as const } : {}),
          ...(result === 'not-applicable' ? { reason: 'cast' as const } : {}),
        };
      }),
    );
};
const stageRecord = (stage: string): fc.Arbitrary<StageRecord> =>
  fc
    .record({
      outcome: fc.constantFrom(
        'met' as const,
        'met' as const,
        'met' as const,
        'not-met' as const,
        'not-tested' as const,
      ),
      held: fc.option(fc.constantFrom(...securedWith.options), { nil: undefined }),
      people: fc.integer({ min: 0, max: 2 }),
      findings: fc.oneof(fc.constant<Finding[]>([]), findings(stage)),
      symptom: fc.boolean().map((b) => b && stage === 'walk'),
      oneLeg: fc.option(fc.constantFrom('left' as const, 'right' as const), { nil: undefined, freq: 3 }),
    })
    .map(({ outcome, held, oneLeg, ...rest }) => ({
      ...rest,
      stage,
      outcome,
      how: held ? ('secured' as const) : ('free' as const),
      ...(held ? { securedWith: held } : {}),
      ...(outcome === 'not-tested' ? { reason: 'refused' as const } : {}),
      ...(stage === 'stand' && oneLeg ? { oneLeg } : {}),
      at: new Date(hours(0)).toISOString(),
    }));

const check = (role: fc.Arbitrary<Role>, from: number, to: number): fc.Arbitrary<Fact> =>
  fc
    .record({
      role,
      at: fc.integer({ min: from, max: to }),
      last: fc.integer({ min: 1, max: DEFAULT_PROTOCOL.stages.length }),
      stages: fc.tuple(...DEFAULT_PROTOCOL.stages.map((s) => stageRecord(s.id))),
      waitsForHelp: fc.constantFrom('yes' as const, 'yes' as const, 'no' as const, 'varies' as const),
      followsInstructions: fc.constantFrom('yes' as const, 'yes' as const, 'no' as const),
      silent: fc.boolean(),
    })
    .map(({ role: who, at, last, stages, silent, ...cooperation }) => {
      const made = assessment({}, { role: who, at }, { stages: stages.slice(0, last) });
      const { cooperation: _, ...data } = made.data;
      return { ...made, data: silent ? data : { ...data, cooperation } };
    });

/** A clean check up to some stage, so that much is cleared in many histories. */
const clean: fc.Arbitrary<Fact> = fc
  .record({
    at: fc.integer({ min: 18, max: 40 }),
    last: fc.constantFrom('edge', 'stand', 'turn', 'walk', 'walk'),
    heldAt: fc.constantFrom('none', 'edge', 'stand', 'turn', 'walk'),
    securedWith: fc.constantFrom(...securedWith.options),
    people: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ at, last, heldAt, people, securedWith: by }) =>
    assessment(upTo(last, { [heldAt]: { how: 'secured', securedWith: by, people } }), { at }),
  );
const history = fc.array(
  fc.oneof(clean, check(fc.constantFrom('nurse' as const, 'therapist' as const), 0, 40)),
  { minLength: 1, maxLength: 4 },
);

const inForce = fc.record({
  weight: fc.option(
    fc.record({
      kg: fc.constantFrom(40, 70, 95, 120, 150),
      how: fc.constantFrom('measured' as const, 'estimated' as const),
    }),
  ),
  walkingSupport: fc.option(
    fc.constantFrom('none' as const, 'stick' as const, 'frame' as const).map((s) => stated(s)),
  ),
  seenWalking: fc.option(fc.constant(stated('stick' as const, 40))),
  onOwn: fc.option(
    fc
      .record({
        where: fc.subarray(['room', 'toilet', 'ward'] as const, { minLength: 1 }),
        when: fc.subarray(['day', 'night'] as const, { minLength: 1 }),
      })
      .map((o) => stated({ where: [...o.where], when: [...o.when] })),
  ),
  everWalkedHere: fc.boolean(),
});

const anyInput: fc.Arbitrary<PlanInput> = fc
  .tuple(history, inForce)
  .map(([facts, { weight, ...rest }]) =>
    planInput(facts, { ...rest, weight: weight ? stated(weight) : null }, 42),
  );

const ACTIVITY = ['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'] as const;

/** Everything that may only restrict: each turns one input into a more careful one. */
const restriction: fc.Arbitrary<(i: PlanInput) => PlanInput> = fc.oneof(
  fc
    .constantFrom(...holdScope.options)
    .map((s) => (i: PlanInput) => ({ ...i, holds: [...i.holds, hold(s)] })),
  fc.constantFrom(...triggerKind.options).map((k) => (i: PlanInput) => ({
    ...i,
    trust: {
      ...i.trust,
      state: i.trust.state === 'current' ? ('re-check' as const) : i.trust.state,
      openTriggers: [...i.trust.openTriggers, trigger(k, 41)],
    },
  })),
  fc.constantFrom(...attachmentKind.options).chain((kind) =>
    fc.boolean().map((needsOwnPerson) => (i: PlanInput) => ({
      ...i,
      attachments: [...i.attachments, stated({ kind, needsOwnPerson, disconnects: 'nurse' })],
    })),
  ),
  fc.constantFrom(...precaution.options).map((p) => (i: PlanInput) => ({
    ...i,
    orders: { ...i.orders, precautions: new Map([...i.orders.precautions, [p, stated(true as const)]]) },
  })),
  fc.constant((i: PlanInput) => ({ ...i, trust: { ...i.trust, state: 'not-known' as const } })),
  fc.constantFrom(...ACTIVITY).map((most) => (i: PlanInput) => {
    const was = i.orders.activity?.value ?? 'no-limit';
    return ACTIVITY.indexOf(most) >= ACTIVITY.indexOf(was)
      ? i
      : { ...i, orders: { ...i.orders, activity: stated(most) } };
  }),
  fc
    .constantFrom<Partial<PlanInput>>(
      { pressureDrop: stated(true as const) },
      { firstTimeUpPending: stated(true as const) },
      { sedatedAt: stated(true as const, 41) },
      { spineOrPelvisInDoubt: stated(true as const) },
      { onOwn: null },
      { seenWalking: null },
      { fence: 'traction' },
    )
    .map((change) => (i: PlanInput) => ({ ...i, ...change })),
);

/** A capability lost or no longer known. */
const loss: fc.Arbitrary<(i: PlanInput) => PlanInput> = fc
  .constantFrom<Partial<PlanInput['capability']>>(
    { waitsForHelp: 'no' },
    { waitsForHelp: 'not known' },
    { followsInstructions: 'no', assists: 'not' },
    { armStrength: 'none' },
    { grip: 'none' },
    { sittingBalance: false },
    { sitsUnheld: false, sittingBalance: false },
    { assists: 'not' },
    { weightKg: null, weightMarked: 'unknown' },
  )
  .map((change) => (i: PlanInput) => ({ ...i, capability: { ...i.capability, ...change } }));

const strictlyBelow = (task: TaskPlan['task'], a: TaskPlan['aid'], b: TaskPlan['aid']) =>
  a !== b && aidCovers(task, a, b);
/** `b` holds where `a` holds, has as many people, and its aid covers that of `a`; or it says HOLD. */
const noLessThan = (a: TaskPlan, b: TaskPlan) =>
  (!a.hold || b.hold) && atLeast(b.people, a.people) && (b.hold || aidCovers(a.task, a.aid, b.aid));
/** Where the way of moving changes, aids may be of different chains; never fewer people or a lesser aid. */
const notLessThan = (a: TaskPlan, b: TaskPlan) =>
  (!a.hold || b.hold) && atLeast(b.people, a.people) && !strictlyBelow(a.task, b.aid, a.aid);

type Compare = (a: TaskPlan, b: TaskPlan) => boolean;
function expectNoLess(before: PlanInput, after: PlanInput, compare: Compare): void {
  const a = planStay(before);
  const b = planStay(after);
  for (const when of ['day', 'night'] as const) {
    const short = (p: TaskPlan | undefined) => p && `${p.hold ? 'HOLD ' : ''}${p.people} ${p.aid}`;
    const lowered = a[when].flatMap((p, i) =>
      compare(p, b[when][i]!) ? [] : [`${when} ${p.task}: ${short(p)} became ${short(b[when][i])}`],
    );
    expect(lowered).toEqual([]);
  }
}

describe('never less help', { timeout: patience }, () => {
  it('no restriction lowers any task by day or night', () => {
    fc.assert(
      fc.property(anyInput, fc.array(restriction, { maxLength: 3 }), restriction, (base, before, added) => {
        const input = before.reduce((i, r) => r(i), base);
        expectNoLess(input, added(input), noLessThan);
      }),
      runs(300, 'cases'),
    );
  });
  it('no lost capability lowers any task', () => {
    fc.assert(
      fc.property(anyInput, fc.array(loss, { maxLength: 2 }), loss, (base, before, lost) => {
        const input = before.reduce((i, l) => l(i), base);
        expectNoLess(input, lost(input), notLessThan);
      }),
      runs(300, 'cases'),
    );
  });
  it('no leg that bears less lowers any task', () => {
    fc.assert(
      fc.property(
        anyInput,
        fc.constantFrom('left-leg' as const, 'right-leg' as const),
        fc.constantFrom('none' as const, 'limited' as const),
        (base, leg, most) => {
          const was = base.capability.weightBearing;
          const now = { ...was, [leg]: was[leg] === 'none' ? 'none' : most };
          const bears = bearsAsAWhole(now['left-leg'], now['right-leg']);
          const capability = { ...base.capability, weightBearing: now, bears };
          expectNoLess(base, { ...base, capability }, notLessThan);
        },
      ),
      runs(300, 'cases'),
    );
  });
  it('re-check is never less than the plan before', () => {
    fc.assert(
      fc.property(anyInput, (base) => {
        const current = { ...base, trust: trust('current') };
        expectNoLess(current, { ...current, trust: trust('re-check') }, noLessThan);
        expectNoLess(current, { ...current, trust: trust('not-known') }, noLessThan);
      }),
      runs(300, 'cases'),
    );
  });
  it('PLAN-2 the night is never less than the day', () => {
    fc.assert(
      fc.property(anyInput, fc.array(restriction, { maxLength: 4 }), (base, all) => {
        const { day, night } = planStay(all.reduce((i, r) => r(i), base));
        expect(day.filter((p, i) => !noLessThan(p, night[i]!))).toEqual([]);
      }),
      runs(300, 'cases'),
    );
  });
  it('a check by someone who may only make it safer never lowers any task', () => {
    fc.assert(
      fc.property(
        history,
        check(fc.constant('aide' as const), 0, 42),
        inForce,
        (facts, aide, { weight, ...rest }) => {
          const extra = { ...rest, weight: weight ? stated(weight) : null, trust: trust('current') };
          expectNoLess(planInput(facts, extra, 42), planInput([...facts, aide], extra, 42), notLessThan);
        },
      ),
      runs(300, 'cases'),
    );
  });
  it('no history throws, and every task has its plan and its reasons', () => {
    fc.assert(
      fc.property(
        fc.array(check(fc.constantFrom('nurse' as const, 'therapist' as const, 'aide' as const), 0, 60), {
          maxLength: 6,
        }),
        fc.array(restriction, { maxLength: 5 }),
        (facts, all) => {
          const { day, night } = planStay(all.reduce((i, r) => r(i), planInput(facts, {}, 42)));
          for (const p of [...day, ...night]) expect(p.because.length).toBeGreaterThan(0);
        },
      ),
      runs(300, 'cases'),
    );
  });
});
