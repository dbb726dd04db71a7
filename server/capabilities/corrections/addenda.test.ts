/** Words beside an entry: who may add them, and that they change nothing else. */
import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import { AIDE, given, hours, left, NURSE, THERAPIST } from '../given.testkit.ts';
import { anna, of, session, walked } from './corrections.testkit.ts';

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
