/** Where the next check begins after a fall of pressure, and what its reasons name. Source: design, row "assessment". */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';

const next = (at: number, ...told: Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(at)).view.nextCheck!;
/** A check with a whole pressure set; standing at `one` mmHg after 130 lying. */
const withSet = (
  last: Parameters<typeof check>[0],
  at: number,
  one = 126,
  says: Parameters<typeof check>[2] = {},
  id = `set-${at}`,
): Told => {
  const pressure = (posture: string, minute: number, systolic: number) => ({
    kind: 'pressure',
    posture,
    minute,
    systolic,
    diastolic: 76,
    at: toIso(hours(at + (posture === 'lying' ? 0 : minute / 60))),
  });
  const readings = [pressure('lying', 5, 130), pressure('standing', 1, one), pressure('standing', 3, 126)];
  return { ...check(last, at, says, { depth: 'full-with-pressure', risingSymptoms: [], readings }), id };
};

describe('the first check of a stay', () => {
  it('is because the person arrived, whatever else was entered since', () => {
    const byAide: Told = { ...withSet('walk', 1), role: 'aide' };
    const said = next(2, byAide);
    expect(said.because.map((b) => b.rule)).toEqual(['next-check/first']);
    expect(said.because[0]!.facts).toEqual([stayOf().events[0]!.id]);
  });
});

describe('a check with the pressure set, for a fall that is not over', () => {
  const fell = withSet('walk', 1, 105);
  const last = (...told: Told[]) => {
    const { depth, from, because } = next(6, fell, ...told);
    return { depth, from, words: because.at(-1)!.words };
  };
  it('begins at the first stage because no stage is cleared', () => {
    expect(last(check('clear', 5, { clear: { outcome: 'not-met' } }))).toEqual({
      depth: 'full-with-pressure',
      from: 'clear',
      words: 'No stage is cleared: begins at clear',
    });
  });
  it('begins at the first stage because that is the last one cleared', () => {
    expect(last(check('upright', 5, { upright: { outcome: 'not-met' } }))).toEqual({
      depth: 'full-with-pressure',
      from: 'clear',
      words: 'Begins at clear: cleared with all before it, each less than 12 h ago',
    });
  });
});

describe('two checks of one time that disagree', () => {
  it('are checked again from the first stage, and ask for no pressures by that', () => {
    const two = [
      withSet('walk', 1, 126, {}, 'yes'),
      withSet('stand', 1, 126, { stand: { outcome: 'not-met' } }, 'no'),
    ];
    const said = next(2, ...two);
    expect(said.because.map((b) => b.rule)).toContain('next-check/conflict');
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
  });
});

describe('the check after a session in which a person was lowered to the floor', () => {
  const after = (...events: string[]) => {
    const { depth, from, because } = next(4, withSet('walk', 1), session(3, { events }));
    return { depth, from, words: because.find((b) => b.rule === 'next-check/trigger')?.words };
  };
  it('says dizzy where the words of the fall do not, and measures the pressures', () => {
    expect(after('dizzy', 'lowered-to-floor')).toEqual({
      depth: 'full-with-pressure',
      from: 'clear',
      words: 'Fall, dizzy',
    });
    expect(after('lowered-to-floor')).toEqual({ depth: 'full', from: 'clear', words: 'Fall' });
  });
  it('says dizzy once where the words say it already', () => {
    expect(after('dizzy').words).toBe('Something went wrong in a session: dizzy');
  });
});
