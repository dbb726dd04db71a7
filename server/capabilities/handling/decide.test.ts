import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/handling/commands';
import { holdPlaced, triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { scopeSet } from '@footboard/shared/capabilities/stays/events';
import { role } from '@footboard/shared/kernel/author';
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
  upToFailed,
} from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const walked = checked('anna', 'walk', { at: hours(1) });
const setOn = { stay: 'anna', where: ['room', 'toilet'], when: ['day'] } satisfies {
  stay: string;
  where: ('room' | 'toilet')[];
  when: 'day'[];
};
const cooperation = (waitsForHelp: 'yes' | 'no' | 'varies') =>
  checked('anna', 'walk', { at: hours(1) }, { cooperation: { waitsForHelp, followsInstructions: 'yes' } });

describe('on own', () => {
  it('given walking cleared free and waits for help yes, when a nurse or therapist sets it, then it stands', () => {
    for (const by of [STAFF.nurse, THERAPIST, STAFF['charge-nurse']]) {
      given(anna, walked)
        .when(commands.setOnOwn, { ...setOn, where: ['room', 'toilet', 'room'] }, { by })
        .appends(['on-own-set', 'stay/anna', { where: ['room', 'toilet'], when: ['day'] }]);
    }
  });
  it('is not set by anyone else', () => {
    for (const who of ['aide', 'handling-coordinator', 'manager', 'records', 'administrator'] as const) {
      given(anna, walked).when(commands.setOnOwn, setOn, { by: STAFF[who] }).refuses('not-your-role');
    }
  });
  it('is not set before walking is cleared, nor when it was cleared only held safe', () => {
    given(anna).when(commands.setOnOwn, setOn).refuses('not-cleared-for-own');
    given(anna, checked('anna', 'turn', { at: hours(1) }))
      .when(commands.setOnOwn, setOn)
      .refuses('not-cleared-for-own');
    const held = check('anna', 'walk', hours(1)).stages.map((s) =>
      s.stage === 'walk' ? { ...s, how: 'secured' as const, securedWith: 'sling' as const } : s,
    );
    given(anna, checked('anna', 'walk', { at: hours(1) }, { stages: held }))
      .when(commands.setOnOwn, setOn)
      .refuses('not-cleared-for-own');
  });
  it('is not set unless the person surely waits for help', () => {
    given(anna, cooperation('yes')).when(commands.setOnOwn, setOn).accepts();
    given(anna, cooperation('varies')).when(commands.setOnOwn, setOn).refuses('may-not-wait-for-help');
    given(anna, cooperation('no')).when(commands.setOnOwn, setOn).refuses('may-not-wait-for-help');
  });
  it('is not set while anything is open, held or out of date', () => {
    given(anna, walked, fact(triggerRecorded, 'anna', { kind: 'sedation' }, { at: hours(2), by: AIDE }))
      .when(commands.setOnOwn, setOn)
      .refuses('own-while-open-trigger');
    given(
      anna,
      walked,
      fact(
        holdPlaced,
        'anna',
        { hold: 'h1', scope: 'walking', reason: 'unstable', owner: 'aide' as StaffId, reviewAt: iso(2.5) },
        { at: hours(2), by: AIDE },
      ),
    )
      .when(commands.setOnOwn, setOn)
      .refuses('own-while-hold');
    given(anna, walked)
      .when(commands.setOnOwn, setOn, { at: hours(40) })
      .refuses('own-while-recheck');
  });
  /** 20 systolic or 10 diastolic within 3 min of standing: Freeman et al., Auton Neurosci 2011;161:46-48. */
  it('is not set after a pressure drop', () => {
    const pressure = (posture: 'lying' | 'standing', systolic: number, minute: number) => ({
      kind: 'pressure' as const,
      posture,
      systolic,
      diastolic: 75,
      minute,
      at: iso(1),
    });
    const withSet = (standing: number) =>
      given(
        anna,
        checked(
          'anna',
          'walk',
          { at: hours(1) },
          {
            depth: 'full-with-pressure',
            risingSymptoms: [],
            readings: [
              pressure('lying', 140, 5),
              pressure('standing', standing, 1),
              pressure('standing', standing, 3),
            ],
          },
        ),
      ).when(commands.setOnOwn, setOn);
    withSet(115).refuses('pressure-drop');
    withSet(135).accepts();
  });
  it('given a late entry, when something since then speaks against it, then the safer stands', () => {
    given(anna, walked, checked('anna', 'stand', { at: hours(3) }, { stages: upToFailed('stand', hours(3)) }))
      .when(commands.setOnOwn, setOn, { at: hours(2), now: hours(4) })
      .refuses('not-cleared-for-own');
    given(anna, checked('anna', 'walk', { at: hours(3) }))
      .when(commands.setOnOwn, setOn, { at: hours(2), now: hours(4) })
      .refuses('not-cleared-for-own');
  });
  it("is not set under the clinician's own plan", () => {
    given(anna, walked, fact(scopeSet, 'anna', { scope: 'comfort' }, { at: hours(2) }))
      .when(commands.setOnOwn, setOn)
      .refuses('not-cleared-for-own');
  });
  it('is taken back by anyone, set or not', () => {
    for (const who of role.options) {
      given(anna)
        .when(commands.removeOnOwn, { stay: 'anna' }, { by: STAFF[who] })
        .appends(['on-own-removed', 'stay/anna', {}]);
    }
    given(anna, left('anna', 'b1', { at: hours(1) }))
      .when(commands.removeOnOwn, { stay: 'anna' })
      .refuses('stay-ended');
  });
});
