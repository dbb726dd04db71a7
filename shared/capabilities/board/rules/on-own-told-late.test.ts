/** "On own" and what was entered late, or twice at one time: what it stands on and what takes it back. Design, people and rule 2. */
import { describe, expect, it } from 'vitest';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hours,
  recordOf,
  retract,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';
import { walkingSupportOf } from './on-own.ts';

const own = (id: string, extra: Partial<Told> = {}, where = ['room'], when = ['day']): Told => ({
  type: 'on-own-set',
  at: 1,
  id,
  payload: { where, when },
  ...extra,
});
const seizure = (extra: Partial<Told>): Told => ({ ...trigger('seizure', 0.5), id: 'seizure', ...extra });
const walked = check('walk', 0.25);
const checkedAgain = check('walk', 2.5);
const viewOf = (told: readonly Told[], h = 6) => evaluateStay(recordOf(told), ward, calendar, hours(h)).view;
const here = (...told: readonly Told[]) => viewOf([begun(), ...told]);

describe('given a seizure that a check has answered, then "on own" is off and stays off', () => {
  it.each([
    [
      'when it was set for a time before the seizure, and entered only after it',
      own('own', { recorded: 3 }),
      { at: 2 },
    ],
    [
      'when the two are of one time, and were entered together',
      own('own', { recorded: 2 }),
      { at: 1, recorded: 2 },
    ],
    [
      'when the seizure was told of later, and the only look was at its very time',
      own('own'),
      { at: 0.25, recorded: 2 },
    ],
  ] as const)('%s', (_when, set, when) => {
    expect(here(walked, set, seizure(when), checkedAgain).onOwn).toBeNull();
  });
});

describe('given a reason to look again before "on own" was set, then it stands', () => {
  it('when the seizure was entered together with it: who set it knew', () => {
    const told = here(walked, own('own', { recorded: 2 }), seizure({ recorded: 2 }), checkedAgain);
    expect(told.onOwn?.event).toBe('own');
  });
  it('when the seizure was told of later, and a check at the very time it was set had looked', () => {
    const told = here(check('walk', 1), own('own'), seizure({ recorded: 2 }), checkedAgain);
    expect(told.onOwn?.event).toBe('own');
  });
  it('when only the arrival was entered after it', () => {
    expect(viewOf([{ ...begun(), recorded: 2 }, own('own')]).onOwn?.event).toBe('own');
  });
  it('when an entry had been withdrawn, and a check has looked since', () => {
    const told = here(walked, seizure({}), retract(0.6, 'seizure'), check('walk', 0.75), own('own'));
    expect(told.onOwn?.event).toBe('own');
  });
});

describe('given "on own" set twice at one time', () => {
  it.each([
    ['a place more', ['room', 'toilet'], ['day']],
    ['a time more', ['room'], ['day', 'night']],
  ])('when one of the two says %s, then the narrower one stands against it', (_more, where, when) => {
    for (const [narrow, wide] of [
      ['x1', 'x2'],
      ['x2', 'x1'],
    ] as const) {
      const { onOwn, trust } = here(walked, own(narrow), own(wide, {}, where, when));
      expect(onOwn).toEqual({ where: ['room'], when: ['day'], event: narrow });
      expect(trust.conflicts).toMatchObject([{ question: 'on own', safer: narrow, other: wide }]);
    }
  });
  it('when they name no time together, then it is off', () => {
    expect(here(walked, own('x1'), own('x2', {}, ['room'], ['night'])).onOwn).toBeNull();
  });
  it('when somebody who may not free told, after the first of them only, that the staged check applied, then it is off', () => {
    const applied: Told = {
      type: 'scope-set',
      at: 0.5,
      role: 'aide',
      payload: { scope: 'staged' },
      recorded: 3,
    };
    expect(here(walked, own('x1'), own('x2', { recorded: 4 }), applied).onOwn).toBeNull();
    expect(
      here(walked, own('x1', { recorded: 4 }), own('x2', { recorded: 4 }), applied).onOwn,
    ).not.toBeNull();
  });
});

describe('given "on own" set and removed at one time, then both are shown', () => {
  const removed: Told = { type: 'on-own-removed', at: 1, role: 'aide', id: 'removed', payload: {} };
  it.each([
    ['when a check was at that very time', check('walk', 1)],
    ['when there was a walk since, which is no look at the plan', session(2)],
  ])('%s', (_when, told) => {
    const { conflicts } = here(walked, own('own'), removed, told).trust;
    expect(conflicts).toMatchObject([{ question: 'on own', safer: 'removed', other: 'own' }]);
  });
});

describe('given a check by a protocol that nobody can read any more, with a stage not met', () => {
  it('then "on own" is taken back, and does not come back with a later check', () => {
    const unread = (outcome: 'met' | 'not-met') =>
      check('walk', 2, { walk: { outcome } }, { protocol: { id: 'gone', version: 1 } });
    expect(here(walked, own('own'), unread('met'), checkedAgain).onOwn?.event).toBe('own');
    expect(here(walked, own('own'), unread('not-met'), checkedAgain).onOwn).toBeNull();
  });
});

it('given a stage not met that the protocol of the check does not have, then "on own" is taken back by that too', () => {
  const known = check('walk', 2);
  const { stages, ...rest } = known.payload as { stages: readonly { outcome: string }[] };
  const more = (outcome: string): Told => ({
    ...known,
    payload: { ...rest, stages: [...stages, { ...stages[0]!, stage: 'garden', outcome }] },
  });
  expect(here(walked, own('own'), more('met'), checkedAgain).onOwn?.event).toBe('own');
  expect(here(walked, own('own'), more('not-met'), checkedAgain).onOwn).toBeNull();
});

describe('given two walking supports seen at one time', () => {
  const walkedWith = (id: string, walkingSupport: string, met = true): Told => ({
    ...check('walk', 2, met ? {} : { walk: { outcome: 'not-met' } }, { walkingSupport }),
    id,
  });
  const support = (...told: readonly Told[]) => walkingSupportOf(effectiveFacts(stayOf(...told)).facts);

  it('the steadier one stands, and the words say so to both authors', () => {
    const { stands, conflicts } = support(walkedWith('a', 'frame'), walkedWith('b', 'stick'));
    expect(stands).toMatchObject({ value: 'frame', fact: 'a' });
    expect(conflicts).toEqual([
      {
        question: 'walking support',
        safer: 'a',
        other: 'b',
        words: 'Two walking supports were seen at the same time: the steadier one stands; tell both authors',
      },
    ]);
  });
  it('alike, the same entry is named whichever came first and whatever else they found', () => {
    for (const [one, two] of [
      [walkedWith('a', 'stick'), walkedWith('b', 'stick')],
      [walkedWith('b', 'stick'), walkedWith('a', 'stick')],
      [walkedWith('a', 'stick', false), walkedWith('b', 'stick')],
      [walkedWith('a', 'stick'), walkedWith('b', 'stick', false)],
    ] as const) {
      expect(support(one, two)).toMatchObject({ stands: { value: 'stick', fact: 'b' }, conflicts: [] });
    }
  });
});
