/** What the facts of a stay say, asked again and again: for the ward and the clock that ask, and of the last time up. */
import { describe, expect, it } from 'vitest';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { calendar, check, hours, order, stayOf, ward, type StageId, type Told } from './history.testkit.ts';
import { knownAt } from './known.ts';

const silent = () => undefined;
const named = (id: string, told: Told): Told => ({ ...told, id });
const knownOf = (...told: readonly Told[]) =>
  knownAt(effectiveFacts(stayOf(...told)), ward, calendar, hours(5), silent);

describe('what is known of a stay', () => {
  const effective = effectiveFacts(stayOf(check('walk', 1), check('edge', 6)));
  const first = knownAt(effective, ward, calendar, hours(2), silent);

  it('is worked out once, as long as no other fact counts', () => {
    const [again, later] = [2, 5.9].map((h) => knownAt(effective, ward, calendar, hours(h), silent));
    expect(again).toBe(first);
    expect(later).toBe(first);
    const next = knownAt(effective, ward, calendar, hours(6), silent);
    expect(next.facts.length).toBe(first.facts.length + 1);
    expect(knownAt(effective, ward, calendar, hours(2), silent).facts).toEqual(first.facts);
  });
  it('is worked out anew when the ward has published other rules', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.validity.asleepHours.value = 2;
    knownAt(effective, ward, calendar, hours(2), silent);
    const known = knownAt(effective, { ...ward, rules }, calendar, hours(2), silent);
    expect(known.rules.validity.asleepHours.value).toBe(2);
    const back = knownAt(effective, ward, calendar, hours(2), silent);
    expect(back.rules.validity.asleepHours.value).toBe(DEFAULT_RULES.validity.asleepHours.value);
  });
  it("is worked out anew when the ward's clock is another", () => {
    const before = knownAt(effective, ward, calendar, hours(2), silent);
    expect(knownAt(effective, ward, { ...calendar }, hours(2), silent)).not.toBe(before);
  });
});

describe('being up in a staged check', () => {
  const upIn = (told: Told) => knownOf(named('check', told)).upInCheck;
  it.each([
    ['clear', null],
    ['upright', null],
    ['edge', 'edge-sit'],
    ['stand', 'stand'],
    ['turn', 'stand'],
    ['walk', 'walk'],
  ] as const)('that cleared up to %s is: %s', (last, activity) => {
    const up = activity && { at: hours(1), event: 'check', activity };
    expect(upIn(check(last, 1))).toEqual(up);
  });
  it.each([
    ['edge', 'edge-sit'],
    ['stand', 'stand'],
    ['turn', 'stand'],
    ['walk', 'walk'],
  ] as const)('that tested %s alone is: %s', (only, activity) => {
    const told = check(only, 1);
    const { stages, ...rest } = told.payload as { stages: readonly { stage: StageId }[] };
    expect(upIn({ ...told, payload: { ...rest, stages: stages.slice(-1) } })).toMatchObject({ activity });
  });
  it('is of the last check in which the person got that far', () => {
    const twice = [named('walked', check('walk', 1)), named('looked', check('upright', 2))];
    expect(knownOf(...twice).upInCheck).toMatchObject({ event: 'walked', activity: 'walk' });
    expect(knownOf(...twice, named('sat', check('edge', 3))).upInCheck).toMatchObject({ event: 'sat' });
  });
});

describe('a check that shows more than an order allows', () => {
  const upTo = (most: string): Told => named(`up to ${most}`, order(1, { about: 'activity', most }));
  const brace = named('brace', order(1.2, { about: 'brace', on: true }));
  const walked = named('walked', check('walk', 2));
  const conflicts = (...told: readonly Told[]) => knownOf(...told).conflicts;
  const stands = [
    {
      question: 'order and check',
      safer: 'up to chair',
      other: 'walked',
      words: 'The check shows more than the order in force allowed: the order stands; tell both authors',
    },
  ];

  it('is told to both authors, whatever else is ordered', () => {
    expect(conflicts(upTo('chair'), walked)).toEqual(stands);
    expect(conflicts(upTo('chair'), brace, walked)).toEqual(stands);
    expect(conflicts(upTo('walk'), brace, walked)).toEqual([]);
  });
  it('is old news once that order limits nothing any more', () => {
    const free = order(3, { about: 'activity', most: 'no-limit' });
    expect(conflicts(upTo('chair'), brace, walked, free)).toEqual([]);
  });
});
