/** "On own" beside a reason to look again, whichever of the two was told first. Design, people and rule 2. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, stayOf, trigger, ward, type Told } from './history.testkit.ts';

const onOwn = (at: number, recorded = at): Told => ({
  type: 'on-own-set',
  at,
  role: 'nurse',
  id: `own-${at}`,
  payload: { where: ['room'], when: ['day'] },
  recorded,
});
const onOwnAt = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(check('walk', 0.25), ...told), ward, calendar, hours(h)).view.onOwn?.event ?? null;

describe('given "on own" was set after a seizure', () => {
  const seizure: Told = { ...trigger('seizure', 0.5), id: 'seizure' };

  it('when nobody has looked since, then it waits', () => {
    expect(onOwnAt(3, seizure, onOwn(1))).toBeNull();
  });
  it('when a check has cleared as much again, then it stands as it was set', () => {
    expect(onOwnAt(3, seizure, onOwn(1), check('walk', 2))).toBe('own-1');
  });
  it('when the seizure was told of only afterwards, then it is off, and stays off after a check', () => {
    const late: Told = { ...seizure, recorded: 1.5 };
    expect(onOwnAt(1.75, onOwn(1), late)).toBeNull();
    expect(onOwnAt(3, onOwn(1), late, check('walk', 2))).toBeNull();
    expect(onOwnAt(4, onOwn(1), late, check('walk', 2), onOwn(3))).toBe('own-3');
  });
  it('when somebody had looked between the two, then a seizure told of late takes nothing back', () => {
    const late: Told = { ...seizure, recorded: 1.5 };
    expect(onOwnAt(3, check('walk', 0.75), onOwn(1), late)).toBe('own-1');
  });
});

describe('given no reason to look again but the arrival', () => {
  it('then it stands', () => {
    expect(onOwnAt(1.5, onOwn(1))).toBe('own-1');
  });
});
