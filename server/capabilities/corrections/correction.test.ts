/** A correction puts an entry of the same kind in the place of a wrong one. */
import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import { onOwnSet } from '@footboard/shared/capabilities/handling/events';
import { holdPlaced } from '@footboard/shared/capabilities/orders/events';
import { goalSet, sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Session } from '@footboard/shared/capabilities/sessions/values';
import { scopeSet } from '@footboard/shared/capabilities/stays/events';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { Json } from './replacement.ts';
import {
  AIDE,
  CHARGE_NURSE,
  check,
  checked,
  fact,
  given,
  hours,
  iso,
  NURSE,
  STAFF,
  THERAPIST,
} from '../given.testkit.ts';
import { anna, of, RECORDS, session, walk, walked } from './corrections.testkit.ts';

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
