/** Whoever signs a ward's limits is told of each how far its source was read. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { READ_STATUS } from '../../../kernel/read-in.ts';
import { limitRead } from './read-in.ts';
import { DEFAULT_RULES } from './rules-document.ts';

/** A limit of the rules that a ward starts with, by its place. */
function limitAt(place: string): { readonly source: string } {
  let found: unknown = DEFAULT_RULES;
  for (const key of place.split('.')) found = (found as Record<string, unknown>)[key];
  return found as { readonly source: string };
}
const readOf = (place: string) => limitRead(place.split('.'), limitAt(place));
const statusOf = (place: string) => readOf(place)?.status;

describe('how far the source of a limit was read', () => {
  it.each([
    ['the pressure that is too low to start', 'start.systolicBelow'],
    ['the breathing that is too fast to start', 'start.breathingAbove'],
    ['the early-warning total', 'earlyWarning.totalFrom'],
    ['the fall of the pressure on standing', 'rising.systolicFall'],
    ['the fall of the pressure on sitting up', 'rising.seatedSystolicFall'],
    ['the rise of the pressure on standing', 'rising.systolicRise'],
    ['what one carer lifts', 'handling.liftLimitKgPerCarer'],
    ['a limb held up', 'handling.limbHoldKgPerCarer'],
    ['slow to get up and walk', 'walking.upAndGoFrom'],
    ['the pace of a higher risk', 'walking.higherRiskBelow'],
    ['the pace at which people fall', 'walking.fallsUpTo'],
  ])('given %s, then it was read in its source', (_what, place) => {
    expect(statusOf(place)).toBe('confirmed');
  });

  it.each([
    ['the mean pressure that is too high', 'criticalCare.meanPressureAbove', 'a review that tabulates'],
    ['the time of a move in a ceiling lift', 'forecast.trackSeconds', 'an abstract or a summary only'],
    ['the time of a move by two people', 'forecast.pairMinutes', 'an abstract or a summary only'],
    ['times up a day', 'activity.timesUp', 'an abstract or a summary only'],
    ['the length of a spell upright', 'activity.spellMinutes', 'an abstract or a summary only'],
    ['the most that a person is to walk', 'activity.walkCeilingMetres', 'an abstract or a summary only'],
    ['the pace of somebody who stays at home', 'walking.householdBelow', 'not read at the source'],
    ['a saturation at which a session stops', 'stop.saturationBelow', 'not read at the source'],
  ])('given %s, then it is restated, and where it was read is said', (_what, place, where) => {
    expect(readOf(place)).toMatchObject({ status: 'restated', note: expect.stringContaining(where) });
  });

  it.each([
    ['the pressure lying that counts as high', 'rising.lyingHighFrom'],
    ['the heart rate at which intensive care asks', 'criticalCare.heartRateAskFrom'],
    ['slow to rise five times', 'walking.fiveRisesAbove'],
    ['the law on lifting equipment, restated in guidance', 'aids.examinationMonths.sling'],
  ])('given %s, then it is from memory, whatever else its source names', (_what, place) => {
    expect(statusOf(place)).toBe('from memory');
  });

  it.each([
    ['pain at which a nurse is asked', 'start.painAskFrom'],
    ['the check after a fall', 'validity.triggers.fall'],
    ['the most times up, as one hospital does it', 'activity.timesUpMost'],
  ])('given %s, then it is practice and passes for nothing that was read', (_what, place) => {
    expect(readOf(place)).toMatchObject({ status: 'practice', note: 'no source' });
  });

  it('given a source that says of itself it is not published, then it is practice', () => {
    expect(limitRead(['start', 'painAskFrom'], { source: 'no published source' })?.status).toBe('practice');
  });

  it.each([
    ['rising.initialSystolicFall', 'rising.systolicFall'],
    ['rising.initialDiastolicFall', 'rising.diastolicFall'],
    ['rising.initialWithinSeconds', 'rising.classicWithinMinutes'],
    ['rising.heartRateRise', 'rising.systolicFall'],
    ['criticalCare.endExpiratoryAbove', 'criticalCare.oxygenFractionAbove'],
    ['criticalCare.sedationAskBelow', 'criticalCare.oxygenFractionAbove'],
    ['criticalCare.sedationBelow', 'criticalCare.oxygenFractionAbove'],
    ['criticalCare.sedationAskAbove', 'criticalCare.oxygenFractionAbove'],
    ['criticalCare.sedationAbove', 'criticalCare.oxygenFractionAbove'],
  ])('given %s, then it was read less well than %s of the same source', (place, other) => {
    expect([statusOf(place), statusOf(other)]).toEqual(['restated', 'confirmed']);
  });

  it('given a source that nobody has said anything of, then nothing is claimed for it', () => {
    expect(limitRead(['start', 'systolicBelow'], { source: 'a textbook on a shelf' })).toBeNull();
    // To name a source that was read is not to be it.
    const quoted = `A letter on ${limitAt('rising.systolicFall').source}`;
    expect(limitRead(['start', 'systolicBelow'], { source: quoted })).toBeNull();
  });

  it('given any limit that a ward starts with, then it is said, with whose it is and when to look again', () => {
    const unsaid: string[] = [];
    const look = (group: object, path: readonly string[]): void => {
      for (const [key, one] of Object.entries(group)) {
        if (typeof one !== 'object' || one === null) continue;
        const here = [...path, key];
        if (!('source' in one)) {
          look(one, here);
          continue;
        }
        const read = limitRead(here, one as { source: string });
        const said = read && READ_STATUS.includes(read.status) && read.owner && read.reviewBy;
        if (!said) unsaid.push(here.join('.'));
      }
    };
    look(DEFAULT_RULES, []);
    expect(unsaid).toEqual([]);
  });
});
