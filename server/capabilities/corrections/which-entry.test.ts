/** Which entry may be changed at all. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import { addendumMade, retractionMade } from '@footboard/shared/capabilities/corrections/events';
import { arrived, CHARGE_NURSE, entry, fact, given, hours, left, NURSE } from '../given.testkit.ts';
import { anna, fall, of, RECORDS, session } from './corrections.testkit.ts';

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
