/**
 * Two entries of one instant that disagree: neither is the later one, so the safer stands and both are
 * shown, whichever has the higher id. Source: design, rule 2; which walking support is the steadier one
 * is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, stayOf, trigger, ward, type Told } from './history.testkit.ts';

const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
/** Once with either id first. */
const eitherWay = (a: Told, b: Told): readonly (readonly [Told, Told])[] => [
  [
    { ...a, id: 'x1' },
    { ...b, id: 'x2' },
  ],
  [
    { ...b, id: 'x1' },
    { ...a, id: 'x2' },
  ],
];
const walks: Told = { ...check('walk', 1), id: 'walks' };

describe('given "on own" set twice at one time', () => {
  const own = (where: string[], when: string[], at = 2, role: Told['role'] = 'nurse'): Told => ({
    type: 'on-own-set',
    at,
    role: role!,
    payload: { where, when },
  });
  const removed = (at: number): Told => ({ type: 'on-own-removed', at, role: 'aide', payload: {} });
  const room = own(['room'], ['day']);
  const all = own(['room', 'ward'], ['day', 'night'], 2, 'therapist');

  it('not alike: then only what both say counts, and both are shown', () => {
    for (const [one, other] of eitherWay(room, all)) {
      const { onOwn, trust } = view(3, walks, one, other);
      expect(onOwn).toMatchObject({ where: ['room'], when: ['day'] });
      expect(trust.state).toBe('re-check');
      const narrow = one.payload === room.payload ? 'x1' : 'x2';
      expect(trust.conflicts).toEqual([
        expect.objectContaining({ question: 'on own', safer: narrow, other: narrow === 'x1' ? 'x2' : 'x1' }),
      ]);
    }
  });
  it('for places and times of which neither holds the other: then nothing that only one of them says counts', () => {
    for (const [one, other] of eitherWay(
      own(['room', 'toilet'], ['day']),
      own(['toilet', 'ward'], ['day', 'night']),
    )) {
      const { onOwn, trust } = view(3, walks, one, other);
      expect(onOwn).toMatchObject({ where: ['toilet'], when: ['day'] });
      expect(trust.conflicts).toMatchObject([{ question: 'on own' }]);
    }
  });
  it('with nothing in common: then it is off, and both are shown', () => {
    for (const [one, other] of eitherWay(own(['room'], ['day']), own(['ward'], ['day']))) {
      const { onOwn, trust } = view(3, walks, one, other);
      expect(onOwn).toBeNull();
      expect(trust.conflicts).toMatchObject([{ question: 'on own' }]);
    }
  });
  it('alike: then there is nothing to show', () => {
    const { onOwn, trust } = view(3, walks, room, own(['room'], ['day'], 2, 'therapist'));
    expect(onOwn).toMatchObject({ where: ['room'] });
    expect(trust).toMatchObject({ state: 'current', conflicts: [] });
  });
  it('and again later: then the later one counts alone', () => {
    const { onOwn, trust } = view(3, walks, room, all, own(['toilet'], ['night'], 2.5));
    expect(onOwn).toMatchObject({ where: ['toilet'], when: ['night'] });
    expect(trust.conflicts).toEqual([]);
  });
  it('once of them by somebody who may not set it: then that one says nothing', () => {
    const { onOwn, trust } = view(3, walks, room, own(['ward'], ['night'], 2, 'aide'));
    expect(onOwn).toMatchObject({ where: ['room'], when: ['day'] });
    expect(trust.conflicts).toEqual([]);
  });
  it('and taken back at that very time: then it is off, and both are shown until a check', () => {
    for (const [one, other] of eitherWay(room, removed(2))) {
      const { onOwn, trust } = view(3, walks, one, other);
      expect(onOwn).toBeNull();
      expect(trust.conflicts).toMatchObject([{ question: 'on own' }]);
      expect(view(4, walks, one, other, check('walk', 3.5)).trust.conflicts).toEqual([]);
    }
    expect(view(3, walks, room, removed(2.5)).trust.conflicts).toEqual([]);
  });
  it('and a fall since: then it is off, and what it would have been is no question any more', () => {
    const { onOwn, trust } = view(3, walks, room, all, trigger('fall', 2.5));
    expect(onOwn).toBeNull();
    expect(trust.conflicts).toEqual([]);
  });
});

describe('given two entries of one time on which plan applies', () => {
  const scope = (payload: Record<string, unknown>, role: Told['role'] = 'nurse', at = 2): Told => ({
    type: 'scope-set',
    at,
    role: role!,
    payload,
  });
  const staged = scope({ scope: 'staged' });
  const comfort = scope({ scope: 'comfort' });
  const fenced = (fence: string, ref = 'text-1') => scope({ scope: 'clinicians-plan', fence, plan: { ref } });

  it.each([
    ["a clinician's plan and a comfort plan", fenced('traction'), comfort, 'clinicians-plan'],
    ["a clinician's plan and the staged check", fenced('traction'), staged, 'clinicians-plan'],
    ['the staged check and a comfort plan', staged, comfort, 'staged'],
  ] as const)('%s: the one that guards more stands, and both are shown', (_, safer, other, stands) => {
    for (const [one, two] of eitherWay(safer, other)) {
      const { scope: now, trust, tier } = view(3, walks, one, two);
      expect(now.kind).toBe(stands);
      expect(tier.word === null).toBe(stands !== 'staged');
      const saferId = one.payload === safer.payload ? 'x1' : 'x2';
      expect(trust.conflicts).toEqual([expect.objectContaining({ question: 'scope', safer: saferId })]);
      expect(trust.state).toBe('re-check');
    }
  });
  it('two plans of clinicians for different reasons: a spine in doubt stands, and both are shown', () => {
    for (const [one, two] of eitherWay(
      fenced('traction'),
      fenced('unstable-spine-pelvis-or-long-bone', 'text-2'),
    )) {
      const { scope: now, trust } = view(3, one, two);
      expect(now.fence).toBe('unstable-spine-pelvis-or-long-bone');
      expect(trust.conflicts).toMatchObject([{ question: 'scope' }]);
    }
  });
  it('that say the same: there is nothing to show', () => {
    expect(view(3, walks, { ...comfort, id: 'x1' }, { ...comfort, id: 'x2' }).trust.conflicts).toEqual([]);
  });
  it('and one later: it counts alone', () => {
    const later = scope({ scope: 'comfort' }, 'nurse', 2.5);
    const { scope: now, trust } = view(3, walks, fenced('traction'), staged, later);
    expect(now.kind).toBe('comfort');
    expect(trust.conflicts).toEqual([]);
  });
  it("by somebody who may not free: a comfort plan does not count against the clinician's, and is no dispute", () => {
    for (const [one, two] of eitherWay(fenced('traction'), { ...comfort, role: 'aide' })) {
      expect(view(3, walks, one, two)).toMatchObject({
        scope: { kind: 'clinicians-plan' },
        trust: { conflicts: [] },
      });
    }
  });
  it('one of them the staged check after a comfort plan: somebody looks before the next move', () => {
    for (const [one, two] of eitherWay(staged, comfort)) {
      const { scope: now, trust } = view(3, walks, scope({ scope: 'comfort' }, 'nurse', 1.5), one, two);
      expect(now.kind).toBe('staged');
      expect(trust.openTriggers).toMatchObject([{ kind: 'asked-to-look-again' }]);
    }
  });
});

describe('given two walking supports seen at one time', () => {
  const seen = (walkingSupport: string, at = 2): Told => check('walk', at, {}, { walkingSupport });
  it.each([
    ['none', 'stick'],
    ['stick', 'two-sticks'],
    ['two-sticks', 'crutches'],
    ['crutches', 'wheeled-frame'],
    ['wheeled-frame', 'frame'],
    ['none', 'frame'],
  ])('%s and %s: the steadier one goes along, and both are shown', (lesser, steadier) => {
    for (const [one, two] of eitherWay(seen(lesser), seen(steadier))) {
      const { walkingSupport, trust } = view(3, one, two);
      expect(walkingSupport).toBe(steadier);
      const saferId =
        one.payload === two.payload ? '' : view(3, one).walkingSupport === steadier ? 'x1' : 'x2';
      expect(trust.conflicts).toEqual([
        expect.objectContaining({ question: 'walking support', safer: saferId }),
      ]);
    }
  });
  it('alike, or one of them only later: there is nothing to show', () => {
    expect(view(3, { ...seen('frame'), id: 'x1' }, { ...seen('frame'), id: 'x2' }).trust.conflicts).toEqual(
      [],
    );
    const later = view(3, seen('frame'), seen('stick', 2.5));
    expect(later).toMatchObject({ walkingSupport: 'stick', trust: { conflicts: [] } });
  });
  it('on arrival and in a check of that time: the steadier one goes along too', () => {
    const arrival: Told = { type: 'seen-walking', at: 2, payload: { walkingSupport: 'frame' } };
    for (const [one, two] of eitherWay(arrival, seen('none'))) {
      expect(view(3, one, two).walkingSupport).toBe('frame');
    }
  });
});
