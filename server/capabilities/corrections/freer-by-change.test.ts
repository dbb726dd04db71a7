/** Changing an entry may ask for less help: by whom. Design, rule 2. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import { correctionMade } from '@footboard/shared/capabilities/corrections/events';
import { sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import { usualWayRecorded, weightRecorded } from '@footboard/shared/capabilities/stays/events';
import {
  AIDE,
  CHARGE_NURSE,
  check,
  checked,
  entry,
  fact,
  given,
  hours,
  NURSE,
  THERAPIST,
  upToFailed,
} from '../given.testkit.ts';
import { anna, fall, of, RECORDS, session, walk, walked } from './corrections.testkit.ts';

const weight = (by = NURSE) =>
  fact(weightRecorded, 'anna', { weight: { kg: 70, how: 'measured' } }, { at: hours(1), id: 'weight', by });

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
