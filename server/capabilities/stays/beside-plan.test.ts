import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { AIDE, arrived, given, hours, iso, left, STAFF, THERAPIST } from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const gone = [anna, left('anna', 'b1', { at: hours(2) })];

describe('infection steps', () => {
  it('when a nurse sets or ends them, then that is recorded', () => {
    for (const on of [true, false]) {
      given(anna)
        .when(commands.setIsolation, { stay: 'anna', on })
        .appends(['isolation-set', 'stay/anna', { on }]);
    }
  });
  it('when an aide sets them, or the stay has ended, then that is said', () => {
    given(anna)
      .when(commands.setIsolation, { stay: 'anna', on: true }, { by: AIDE })
      .refuses('not-your-role');
    given(...gone)
      .when(commands.setIsolation, { stay: 'anna', on: true })
      .refuses('stay-ended', '/stay');
  });
});

describe('expected to leave', () => {
  it('when a time ahead is given, or the time is taken back, then that is recorded', () => {
    for (const at of [iso(3.5), iso(90), null]) {
      given(anna)
        .when(commands.expectLeaving, { stay: 'anna', at })
        .appends(['leaving-expected', 'stay/anna', { at }]);
    }
  });
  it('whoever keeps the bed list may say it; an aide tells a nurse', () => {
    const said = { stay: 'anna', at: iso(30) };
    for (const role of ['manager', 'administrator'] as const) {
      given(anna).when(commands.expectLeaving, said, { by: STAFF[role] }).accepts();
    }
    given(anna).when(commands.expectLeaving, said, { by: AIDE }).refuses('not-your-role');
  });
  it('when the time is not ahead, then that is said', () => {
    for (const at of [iso(3), iso(1)]) {
      given(anna).when(commands.expectLeaving, { stay: 'anna', at }).refuses('leaving-in-past', '/at');
    }
  });
  it('given the stay has ended, then that is said', () => {
    given(...gone)
      .when(commands.expectLeaving, { stay: 'anna', at: iso(9) })
      .refuses('stay-ended', '/stay');
  });
});

describe('the line for the bedside', () => {
  const words = 'Left foot first; let her count to three';
  it('when a therapist writes one, then the words are kept apart and the entry points at them', () => {
    const entered = given(anna).when(
      commands.setTherapistLine,
      { stay: 'anna', line: words },
      { by: THERAPIST },
    );
    entered.appends(['therapist-line-set', 'stay/anna', { line: { ref: expect.any(String) as never } }]);
    entered.keeps(['stay/anna', words]);
  });
  it('when it is taken down, then the entry says so and keeps no words', () => {
    const entered = given(anna).when(commands.setTherapistLine, { stay: 'anna', line: null });
    entered.appends(['therapist-line-set', 'stay/anna', {}]);
    entered.keeps();
  });
  it('when an aide writes one, or the stay has ended, then that is said', () => {
    given(anna)
      .when(commands.setTherapistLine, { stay: 'anna', line: words }, { by: AIDE })
      .refuses('not-your-role');
    given(...gone)
      .when(commands.setTherapistLine, { stay: 'anna', line: words })
      .refuses('stay-ended', '/stay');
  });
});
