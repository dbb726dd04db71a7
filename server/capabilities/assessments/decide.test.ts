import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/assessments/commands';
import { holdPlaced, orderChanged, triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import type { TriggerKind } from '@footboard/shared/capabilities/orders/values';
import { scopeSet } from '@footboard/shared/capabilities/stays/events';
import type { StaffId } from '@footboard/shared/kernel/ids';
import {
  AIDE,
  arrived,
  check,
  checked,
  fact,
  given,
  hours,
  iso,
  left,
  STAFF,
  THERAPIST,
} from '../given.testkit.ts';

const anna = arrived('anna', 'b1', { id: 'arrival' });
const trigger = (kind: Exclude<TriggerKind, 'early-warning-rise'>, at = hours(1), of = 'anna') =>
  fact(triggerRecorded, of, { kind }, { at, id: `${of}-${kind}`, by: AIDE });
const comfort = fact(scopeSet, 'anna', { scope: 'comfort' }, { at: hours(1) });
const ownPlan = fact(
  scopeSet,
  'anna',
  { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan' } },
  { at: hours(1) },
);
const holdOn = (scope: 'walking' | 'all-including-turning') =>
  fact(
    holdPlaced,
    'anna',
    { hold: 'h1', scope, reason: 'unstable', owner: 'nurse' as StaffId, reviewAt: iso(8) },
    { at: hours(1) },
  );

describe('a staged check', () => {
  const at = hours(3);
  it('by a qualified author is recorded whole, with its note kept apart', () => {
    for (const by of [STAFF.nurse, THERAPIST, STAFF['charge-nurse']]) {
      const data = check('anna', 'stand', at);
      const { stay: _stay, ...recorded } = data;
      const entered = given(anna).when(
        commands.recordAssessment,
        { ...data, note: 'wants the frame' },
        { by },
      );
      entered.appends([
        'assessment-recorded',
        'stay/anna',
        { ...recorded, answers: [], firstTimeUp: false, wears: [], note: { ref: expect.any(String) } },
      ]);
      entered.keeps(['stay/anna', 'wants the frame']);
    }
  });
  it('by an aide is refused, and says what an aide records instead', () => {
    const entered = given(anna).when(commands.recordAssessment, check('anna', 'stand', at), { by: AIDE });
    entered.refuses('not-your-role');
    expect(entered.decision).toHaveProperty('remedy', expect.stringMatching(/session.*trigger/));
  });
  it('names a protocol the ward knows', () => {
    given(anna)
      .when(commands.recordAssessment, {
        ...check('anna', 'edge', at),
        protocol: { id: 'footboard-default', version: 9 },
      })
      .refuses('protocol-unknown', '/protocol');
  });
  it('with a stage out of order is refused at the stage', () => {
    const data = check('anna', 'edge', at);
    given(anna)
      .when(commands.recordAssessment, { ...data, stages: data.stages.toReversed() })
      .refuses('stage-out-of-order', '/stages/0/stage');
  });
  it('has stages and readings timed within the stay and not ahead', () => {
    given(anna)
      .when(commands.recordAssessment, check('anna', 'edge', hours(-1)))
      .refuses('stage-time-outside-stay', '/stages/0/at');
    given(anna)
      .when(commands.recordAssessment, check('anna', 'edge', hours(4)))
      .refuses('stage-time-outside-stay', '/stages/0/at');
    given(anna)
      .when(
        commands.recordAssessment,
        check('anna', 'edge', at, { readings: [{ kind: 'pain', outOfTen: 2, at: iso(4) }] }),
      )
      .refuses('stage-time-outside-stay', '/readings/0/at');
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.recordAssessment, check('anna', 'edge', hours(2.5)), { at: hours(1.9), now: hours(3) })
      .refuses('stage-time-outside-stay', '/stages/0/at');
  });
  it('answers open triggers of this stay: recorded ones, the arrival, an order', () => {
    const order = fact(
      orderChanged,
      'anna',
      { order: { about: 'brace', on: true } },
      { at: hours(2), id: 'order' },
    );
    given(anna, trigger('fall'), order)
      .when(
        commands.recordAssessment,
        check('anna', 'edge', at, { answers: ['arrival', 'anna-fall', 'order', 'anna-fall'] }),
      )
      .accepts();
  });
  it('may name a trigger that somebody else answered a moment before', () => {
    given(anna, trigger('fall'), checked('anna', 'edge', { at: hours(2) }, { answers: ['anna-fall'] }))
      .when(commands.recordAssessment, check('anna', 'edge', at, { answers: ['anna-fall'] }))
      .accepts();
  });
  it('does not answer what is no trigger, another stay has, or came later', () => {
    const before = given(
      anna,
      arrived('ben', 'b2'),
      trigger('fall', hours(1), 'ben'),
      trigger('faint', hours(3.5)),
    );
    const answering = (answer: string) => check('anna', 'edge', hours(3), { answers: [answer] });
    const now = { at: hours(3), now: hours(4) };
    before
      .when(commands.recordAssessment, answering('ghost'), now)
      .refuses('answer-not-a-trigger', '/answers/0');
    before
      .when(commands.recordAssessment, answering('ben-fall'), now)
      .refuses('answer-not-a-trigger', '/answers/0');
    before
      .when(commands.recordAssessment, answering('anna-faint'), now)
      .refuses('answer-before-trigger', '/answers/0');
  });
  it("is not done under a comfort plan or the clinician's own, and is again once that is lifted", () => {
    for (const scope of [comfort, ownPlan]) {
      given(anna, scope)
        .when(commands.recordAssessment, check('anna', 'edge', at))
        .refuses('no-staged-check', '/stay');
    }
    given(anna, comfort, fact(scopeSet, 'anna', { scope: 'staged' }, { at: hours(2) }))
      .when(commands.recordAssessment, check('anna', 'edge', at))
      .accepts();
    given(anna, comfort)
      .when(commands.recordAssessment, check('anna', 'edge', hours(0.5)), { at: hours(0.5), now: hours(3) })
      .accepts();
  });
});

describe("a nurse's confirm", () => {
  const confirm = { stay: 'anna', task: 'bed-chair' } as const;
  const walked = checked('anna', 'walk', { at: hours(1), id: 'the-check' });

  it('stands on the check whose plan was watched', () => {
    for (const by of [STAFF.nurse, THERAPIST]) {
      given(anna, walked)
        .when(commands.confirmPlan, confirm, { by })
        .appends(['plan-confirmed', 'stay/anna', { task: 'bed-chair', assessment: 'the-check' }]);
    }
  });
  it('renews a plan whose time has run out', () => {
    given(anna, walked)
      .when(commands.confirmPlan, confirm, { at: hours(30) })
      .accepts();
  });
  it('needs a check to confirm', () => {
    given(anna).when(commands.confirmPlan, confirm).refuses('nothing-to-confirm');
  });
  it('answers a light trigger, not a grave one', () => {
    given(anna, walked, trigger('asked-to-look-again', hours(2)))
      .when(commands.confirmPlan, confirm)
      .accepts();
    for (const grave of ['fall', 'faint', 'sedation', 'new-confusion'] as const) {
      given(anna, walked, trigger(grave, hours(2)))
        .when(commands.confirmPlan, confirm)
        .refuses('trigger-needs-check');
    }
  });
  it('does not confirm a move that is on hold', () => {
    given(anna, walked, holdOn('walking'))
      .when(commands.confirmPlan, { stay: 'anna', task: 'walk' })
      .refuses('task-on-hold', '/task');
    given(anna, walked, holdOn('walking'))
      .when(commands.confirmPlan, { stay: 'anna', task: 'in-bed' })
      .accepts();
  });
  it('has no place under a comfort plan', () => {
    given(anna, walked, fact(scopeSet, 'anna', { scope: 'comfort' }, { at: hours(2) }))
      .when(commands.confirmPlan, confirm)
      .refuses('no-staged-check');
  });
  it('is not for an aide', () => {
    given(anna, walked).when(commands.confirmPlan, confirm, { by: AIDE }).refuses('not-your-role');
  });
});

describe('seen walking on arrival', () => {
  const seen = { stay: 'anna', walkingSupport: 'stick' } as const;
  it('is recorded by a nurse within 4 h, before any check', () => {
    given(anna)
      .when(commands.recordSeenWalking, seen, { at: hours(3.9) })
      .appends(['seen-walking', 'stay/anna', { walkingSupport: 'stick' }]);
  });
  it('is not recorded at 4 h or later', () => {
    given(anna)
      .when(commands.recordSeenWalking, seen, { at: hours(4) })
      .refuses('seen-walking-too-late');
  });
  it('is not recorded once a check is, even one that is entered before it', () => {
    given(anna, checked('anna', 'edge', { at: hours(1) }))
      .when(commands.recordSeenWalking, seen)
      .refuses('already-checked');
    given(anna, checked('anna', 'edge', { at: hours(2) }))
      .when(commands.recordSeenWalking, seen, { at: hours(1), now: hours(3) })
      .refuses('already-checked');
  });
  it('does not answer a trigger or a hold', () => {
    given(anna, trigger('faint')).when(commands.recordSeenWalking, seen).refuses('seen-walking-with-trigger');
    given(anna, holdOn('walking')).when(commands.recordSeenWalking, seen).refuses('seen-walking-with-hold');
    given(anna, comfort).when(commands.recordSeenWalking, seen).refuses('no-staged-check');
  });
  it('is not for an aide or a therapist', () => {
    for (const by of [AIDE, THERAPIST]) {
      given(anna).when(commands.recordSeenWalking, seen, { by }).refuses('not-your-role');
    }
  });
});
