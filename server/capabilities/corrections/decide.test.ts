import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import {
  addendumMade,
  correctionMade,
  retractionMade,
} from '@footboard/shared/capabilities/corrections/events';
import { onOwnSet } from '@footboard/shared/capabilities/handling/events';
import { holdPlaced, triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { goalSet, sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Session } from '@footboard/shared/capabilities/sessions/values';
import { scopeSet, usualWayRecorded, weightRecorded } from '@footboard/shared/capabilities/stays/events';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { Json } from './replacement.ts';
import {
  AIDE,
  arrived,
  CHARGE_NURSE,
  check,
  checked,
  entry,
  fact,
  given,
  hours,
  iso,
  left,
  NURSE,
  STAFF,
  THERAPIST,
  upToFailed,
} from '../given.testkit.ts';

const RECORDS = STAFF.records;
const anna = arrived('anna', 'b1', { id: 'arrival' });
const walk: Session = {
  outcome: 'done',
  occasion: 'planned',
  activities: ['walk'],
  startedAt: iso(1),
  metres: 30,
  events: [],
  firstTimeUp: false,
};
const session = fact(sessionRecorded, 'anna', { session: walk }, { at: hours(1), id: 'session', by: AIDE });
const fall = fact(triggerRecorded, 'anna', { kind: 'fall' }, { at: hours(1), id: 'fall', by: AIDE });
const weight = (by = NURSE) =>
  fact(weightRecorded, 'anna', { weight: { kg: 70, how: 'measured' } }, { at: hours(1), id: 'weight', by });
const walked = checked('anna', 'walk', { at: hours(1), id: 'check' });

const of = (target: string, reason: 'wrong-value' | 'wrong-person' | 'said-more-later' = 'wrong-value') =>
  ({ stay: 'anna', target, reason }) as const;

describe('addendum and amendment', () => {
  it('on one’s own entry or by a qualified person, the words are kept apart and nothing else changes', () => {
    for (const by of [AIDE, NURSE, THERAPIST]) {
      const added = given(anna, session).when(
        commands.makeAddendum,
        { ...of('session', 'said-more-later'), text: 'her son came along' },
        { by },
      );
      added.appends([
        'addendum-made',
        'stay/anna',
        { target: 'session', reason: 'said-more-later', text: { ref: expect.any(String) } },
      ]);
      added.keeps(['stay/anna', 'her son came along']);
      given(anna, session)
        .when(commands.makeAmendment, { ...of('session'), text: 'metres, not feet' }, { by })
        .appends([
          'amendment-made',
          'stay/anna',
          { target: 'session', reason: 'wrong-value', text: { ref: expect.any(String) } },
        ]);
    }
  });
  it("on another's entry by someone not qualified is refused", () => {
    for (const command of [commands.makeAddendum, commands.makeAmendment]) {
      given(anna, walked)
        .when(command, { ...of('check'), text: 'she was tired' }, { by: AIDE })
        .refuses('not-your-entry', '/target');
    }
  });
  it('may still be made once the stay has ended', () => {
    given(anna, session, left('anna', 'b1', { at: hours(2) }))
      .when(commands.makeAddendum, { ...of('session'), text: 'as told by her son' }, { by: AIDE })
      .accepts();
  });
  it('may speak of an arrival, which is not rewritten', () => {
    given(anna)
      .when(commands.makeAddendum, { ...of('arrival'), text: 'came by ambulance' })
      .accepts();
  });
});

describe('which entry is meant', () => {
  const retract = (target: string, stay = 'anna') => ({ stay, target, reason: 'wrong-person' }) as const;
  it('is an entry of this stay', () => {
    given(anna).when(commands.makeRetraction, retract('ghost')).refuses('entry-unknown', '/target');
    given(anna, arrived('ben', 'b2'), session)
      .when(commands.makeRetraction, retract('session', 'ben'))
      .refuses('entry-unknown', '/target');
    given(anna).when(commands.makeRetraction, retract('session', 'ghost')).refuses('stay-unknown', '/stay');
  });
  it('is not itself a change of an entry', () => {
    const addendum = fact(
      addendumMade,
      'anna',
      { target: entry('session'), reason: 'unclear', text: { ref: 'x' } },
      { at: hours(2), id: 'addendum', by: NURSE },
    );
    const text = 'again';
    const before = given(anna, session, addendum);
    before.when(commands.makeAddendum, { ...of('addendum'), text }).refuses('entry-is-a-change', '/target');
    before.when(commands.makeAmendment, { ...of('addendum'), text }).refuses('entry-is-a-change', '/target');
    before.when(commands.makeCorrection, { ...of('addendum'), replacement: {} }).refuses('entry-is-a-change');
    before.when(commands.makeRetraction, retract('addendum')).refuses('entry-is-a-change', '/target');
  });
  it('says where a person was: moved or ended, never rewritten', () => {
    const before = given(anna, left('anna', 'b1', { at: hours(2), id: 'left' }));
    for (const by of [CHARGE_NURSE, RECORDS, NURSE]) {
      before.when(commands.makeRetraction, retract('arrival'), { by }).refuses('placement-stands', '/target');
      before
        .when(commands.makeCorrection, { ...of('arrival'), replacement: { bed: 'b2' } }, { by })
        .refuses('placement-stands', '/target');
    }
  });
  it('has not been withdrawn already', () => {
    const gone = fact(
      retractionMade,
      'anna',
      { target: entry('fall'), reason: 'never-happened' },
      { at: hours(2), by: NURSE },
    );
    const before = given(anna, fall, gone);
    before.when(commands.makeRetraction, retract('fall'), { by: CHARGE_NURSE }).refuses('entry-withdrawn');
    before
      .when(commands.makeCorrection, { ...of('fall'), replacement: { kind: 'faint' } }, { by: CHARGE_NURSE })
      .refuses('entry-withdrawn');
  });
});

describe('a correction', () => {
  const corrected = (more: Partial<Session>) =>
    ({ session: { ...walk, ...more } }) as unknown as { [field: string]: Json };
  const right = { ...of('session'), replacement: corrected({ metres: 3 }) };

  it('of one’s own entry replaces it by one of the same kind', () => {
    const made = given(anna, session).when(
      commands.makeCorrection,
      { ...right, occurredAt: iso(0.5), text: 'typed a nought too many' },
      { by: AIDE },
    );
    made.appends([
      'correction-made',
      'stay/anna',
      {
        target: 'session',
        type: 'session-recorded',
        schemaVersion: sessionRecorded.version,
        replacement: corrected({ metres: 3 }),
        reason: 'wrong-value',
        occurred: iso(0.5),
        text: { ref: expect.any(String) },
      },
    ]);
    made.keeps(['stay/anna', 'typed a nought too many']);
  });
  it("of another's entry is for the charge nurse or records", () => {
    for (const by of [CHARGE_NURSE, RECORDS]) {
      given(anna, session).when(commands.makeCorrection, right, { by }).accepts();
    }
    for (const by of [NURSE, THERAPIST, STAFF.manager]) {
      given(anna, session).when(commands.makeCorrection, right, { by }).refuses('not-your-entry', '/target');
    }
  });
  it('fits the kind of entry, and points at what does not', () => {
    const wrong = (replacement: object | string) =>
      given(anna, session).when(commands.makeCorrection, { ...of('session'), replacement } as never, {
        by: AIDE,
      });
    wrong(corrected({ metres: -3 })).refuses('replacement-faulty', '/replacement/session/metres');
    wrong({ kind: 'fall' }).refuses('replacement-faulty', '/replacement/session');
    wrong('thirty metres').refuses('replacement-faulty', '/replacement');
    wrong(corrected({ startedAt: iso(9) })).refuses('time-in-future', '/replacement/session/startedAt');
  });
  it('leaves the texts of the entry where they are', () => {
    const said = fact(
      sessionRecorded,
      'anna',
      { session: walk, said: { ref: 'said-1' } },
      { at: hours(1), id: 'session', by: AIDE },
    );
    const made = given(anna, said).when(commands.makeCorrection, right, { by: AIDE });
    expect(made.decision).toMatchObject({
      accept: [{ payload: { replacement: { ...corrected({ metres: 3 }), said: { ref: 'said-1' } } } }],
    });
    given(anna, said)
      .when(
        commands.makeCorrection,
        { ...right, replacement: { ...right.replacement, said: { ref: 'another' } } },
        { by: AIDE },
      )
      .refuses('text-in-replacement', '/replacement/said');
    given(anna, session)
      .when(
        commands.makeCorrection,
        { ...right, replacement: { ...right.replacement, said: { ref: 'another' } } },
        { by: AIDE },
      )
      .refuses('text-in-replacement', '/replacement/said');
  });
  it('drops a text only where the right entry has no place for one', () => {
    const plan = fact(
      scopeSet,
      'anna',
      { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } },
      { at: hours(1), id: 'scope', by: NURSE },
    );
    const made = given(anna, plan).when(commands.makeCorrection, {
      ...of('scope'),
      replacement: { scope: 'staged' },
    });
    expect(made.decision).toMatchObject({ accept: [{ payload: { replacement: { scope: 'staged' } } }] });
  });
  it('speaks of the same hold, at a time within the stay', () => {
    const hold = {
      hold: 'h1',
      scope: 'walking' as const,
      reason: 'unstable' as const,
      owner: 'nurse' as StaffId,
      reviewAt: iso(8),
    };
    const placed = given(anna, fact(holdPlaced, 'anna', hold, { at: hours(1), id: 'hold', by: NURSE }));
    placed
      .when(commands.makeCorrection, { ...of('hold'), replacement: { ...hold, scope: 'out-of-bed' } })
      .accepts();
    placed
      .when(commands.makeCorrection, { ...of('hold'), replacement: { ...hold, hold: 'h2' } })
      .refuses('replacement-names-another', '/replacement/hold');
    for (const wrong of [iso(-1), iso(5)]) {
      placed
        .when(commands.makeCorrection, { ...of('hold'), replacement: hold, occurredAt: wrong })
        .refuses('corrected-time-outside-stay', '/occurredAt');
    }
  });
  it('meets the rules a new entry would meet', () => {
    const outOfOrder = {
      ...(walked.payload as object),
      stages: check('anna', 'edge', hours(1)).stages.toReversed(),
    };
    given(anna, walked)
      .when(commands.makeCorrection, { ...of('check'), replacement: outOfOrder as never })
      .refuses('stage-out-of-order', '/replacement/stages/0/stage');
    const goal = fact(
      goalSet,
      'anna',
      { goal: { activity: 'edge-sit', timesUp: 3 } },
      { at: hours(2), id: 'goal', by: NURSE },
    );
    given(anna, checked('anna', 'edge', { at: hours(1) }), goal)
      .when(commands.makeCorrection, {
        ...of('goal'),
        replacement: { goal: { activity: 'walk', timesUp: 3 } },
      })
      .refuses('goal-above-cleared', '/replacement/goal/activity');
  });
  it('does not widen "on own"; narrowing it is fine', () => {
    const own = fact(
      onOwnSet,
      'anna',
      { where: ['room'], when: ['day', 'night'] },
      { at: hours(2), id: 'own', by: NURSE },
    );
    const before = given(anna, walked, own);
    before
      .when(commands.makeCorrection, {
        ...of('own'),
        replacement: { where: ['room', 'ward'], when: ['day'] },
      })
      .refuses('widening-is-new', '/replacement');
    before
      .when(commands.makeCorrection, { ...of('own'), replacement: { where: ['room'], when: ['day'] } })
      .accepts();
  });
});

describe('who may make it freer by changing an entry', () => {
  const retract = (target: string) => ({ stay: 'anna', target, reason: 'never-happened' }) as const;

  it('an aide withdraws an own entry that only informs, not one that keeps the person safe', () => {
    given(anna, session)
      .when(commands.makeRetraction, retract('session'), { by: AIDE })
      .appends(['retraction-made', 'stay/anna', { target: 'session', reason: 'never-happened' }]);
    given(anna, fall)
      .when(commands.makeRetraction, retract('fall'), { by: AIDE })
      .refuses('lowering-needs-qualified', '/target');
    const wentWrong = fact(
      sessionRecorded,
      'anna',
      { session: { ...walk, events: ['near-fall'] } },
      { at: hours(1), id: 'session', by: AIDE },
    );
    given(anna, wentWrong)
      .when(commands.makeRetraction, retract('session'), { by: AIDE })
      .refuses('lowering-needs-qualified');
    given(anna, wentWrong)
      .when(
        commands.makeCorrection,
        { ...of('session'), replacement: { session: walk } as never },
        { by: AIDE },
      )
      .refuses('lowering-needs-qualified');
  });
  it('an entry that was corrected into something grave counts as grave', () => {
    const worse = fact(
      correctionMade,
      'anna',
      {
        target: entry('session'),
        type: 'session-recorded',
        schemaVersion: 2,
        replacement: { session: { ...walk, events: ['lowered-to-floor'] } } as never,
        reason: 'wrong-value',
      },
      { at: hours(2), by: AIDE },
    );
    given(anna, session, worse)
      .when(commands.makeRetraction, retract('session'), { by: AIDE })
      .refuses('lowering-needs-qualified');
  });
  it("an aide or nurse does not withdraw another's entry; charge nurse and records do", () => {
    const byTherapist = fact(
      usualWayRecorded,
      'anna',
      { usual: { moves: 'walks', transfers: 'alone', stairs: 'yes' } },
      { at: hours(1), id: 'usual', by: THERAPIST },
    );
    for (const by of [AIDE, NURSE]) {
      given(anna, byTherapist)
        .when(commands.makeRetraction, retract('usual'), { by })
        .refuses('not-your-entry', '/target');
    }
    for (const by of [CHARGE_NURSE, RECORDS, THERAPIST]) {
      given(anna, byTherapist).when(commands.makeRetraction, retract('usual'), { by }).accepts();
    }
  });
  it('records withdraws nothing that would leave less help; the charge nurse may', () => {
    given(anna, fall)
      .when(commands.makeRetraction, retract('fall'), { by: RECORDS })
      .refuses('lowering-needs-qualified');
    given(anna, fall).when(commands.makeRetraction, retract('fall'), { by: CHARGE_NURSE }).accepts();
  });
  it('an aide corrects a weight upwards, not downwards', () => {
    const to = (kg: number) => ({
      ...of('weight'),
      replacement: { weight: { kg, how: 'measured' as const } },
    });
    given(anna, weight(AIDE)).when(commands.makeCorrection, to(90), { by: AIDE }).accepts();
    given(anna, weight(AIDE))
      .when(commands.makeCorrection, to(60), { by: AIDE })
      .refuses('lowering-needs-qualified');
    given(anna, weight(NURSE)).when(commands.makeCorrection, to(60), { by: NURSE }).accepts();
  });
  it('a nurse corrects an own check up or down; records only towards more help', () => {
    const lower = { ...(walked.payload as object), stages: upToFailed('walk', hours(1)) } as never;
    given(anna, walked)
      .when(commands.makeCorrection, { ...of('check'), replacement: lower })
      .accepts();
    given(anna, walked)
      .when(commands.makeCorrection, { ...of('check'), replacement: lower }, { by: RECORDS })
      .accepts();
    const failed = checked(
      'anna',
      'walk',
      { at: hours(1), id: 'check' },
      { stages: upToFailed('walk', hours(1)) },
    );
    const higher = { ...(failed.payload as object), stages: check('anna', 'walk', hours(1)).stages } as never;
    given(anna, failed)
      .when(commands.makeCorrection, { ...of('check'), replacement: higher })
      .accepts();
    given(anna, failed)
      .when(commands.makeCorrection, { ...of('check'), replacement: higher }, { by: RECORDS })
      .refuses('lowering-needs-qualified');
  });
  it('a wrong correction is withdrawn by a qualified person, not by an aide', () => {
    const correction = fact(
      correctionMade,
      'anna',
      {
        target: entry('session'),
        type: 'session-recorded',
        schemaVersion: 2,
        replacement: { session: { ...walk, metres: 3 } } as never,
        reason: 'wrong-value',
      },
      { at: hours(2), id: 'correction', by: AIDE },
    );
    const before = given(anna, session, correction);
    for (const by of [CHARGE_NURSE, NURSE, THERAPIST]) {
      before.when(commands.makeRetraction, retract('correction'), { by }).accepts();
    }
    before
      .when(commands.makeRetraction, retract('correction'), { by: AIDE })
      .refuses('lowering-needs-qualified');
  });
});
