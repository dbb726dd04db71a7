/** Who goes along as the second person, and when a visit is nobody's any more. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, session, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { visitAt } from './visits.ts';

/** Ana goes from 1 h to 2 h after the arrival. */
const taken = (second?: string): Told => ({
  type: 'visit-taken',
  at: 1,
  role: 'aide',
  staff: 'ana',
  id: 'the-visit',
  payload: {
    visit: 'v-1',
    by: 'ana',
    ...(second === undefined ? {} : { second }),
    from: toIso(hours(1)),
    until: toIso(hours(2)),
  },
});
const along = (type: 'second-named' | 'second-gave-back', second: string, visit = 'v-1', at = 1.1): Told => ({
  type,
  at,
  role: 'aide',
  id: `${type}-${second}`,
  payload: { visit, second },
});
const visit = (...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(1.5)).view.visit;

describe('whoever goes along', () => {
  it('given somebody is named, then they are the second person, by that entry, and all else stays', () => {
    expect(visit(taken(), along('second-named', 'bea'))).toEqual({
      visit: 'v-1',
      by: 'ana',
      second: 'bea',
      from: hours(1),
      until: hours(2),
      event: 'second-named-bea',
    });
  });

  it('given another is named later, then the one before does not go along any more', () => {
    expect(visit(taken('bea'), along('second-named', 'cid'))).toMatchObject({ by: 'ana', second: 'cid' });
  });

  it('given the one named is who has it already, then nothing changes', () => {
    const one = { by: 'ana', second: 'bea', event: 'the-visit' };
    expect(visit(taken('bea'), along('second-named', 'ana'))).toMatchObject(one);
  });

  it('given the second person cannot, then the visit stays taken and needs a second person again', () => {
    expect(visit(taken('bea'), along('second-gave-back', 'bea'))).toEqual({
      visit: 'v-1',
      by: 'ana',
      second: null,
      from: hours(1),
      until: hours(2),
      event: 'second-gave-back-bea',
    });
  });

  it('given somebody cannot who was not to go along, then the second person stays', () => {
    const one = { by: 'ana', second: 'bea', event: 'the-visit' };
    expect(visit(taken('bea'), along('second-gave-back', 'cid'))).toMatchObject(one);
  });

  it.each(['second-named', 'second-gave-back'] as const)(
    'given what was said is of another visit (%s), then this one stays as it is',
    (type) => {
      const one = { by: 'ana', second: 'bea', event: 'the-visit' };
      expect(visit(taken('bea'), along(type, 'cid', 'another'))).toMatchObject(one);
      expect(visit(taken('bea'), along(type, 'bea', 'another'))).toMatchObject(one);
    },
  );

  it.each(['second-named', 'second-gave-back'] as const)(
    'given nobody has a visit, then what is said of a second person (%s) makes none',
    (type) => {
      expect(visit(along(type, 'bea'))).toBeNull();
    },
  );
});

describe('the end of a visit', () => {
  it('given care by somebody else in the very minute it was to begin, then nobody needs to go any more', () => {
    expect(visit({ ...taken(), at: 0.5 }, { ...session(1), staff: 'bea' })).toBeNull();
  });

  it('given it was taken later than the time asked about, then nobody had it then', () => {
    const { facts } = effectiveFacts(stayOf(taken()));
    expect(visitAt(facts, hours(1) - 1)).toBeNull();
    expect(visitAt(facts, hours(1))).toMatchObject({ by: 'ana', since: hours(1) });
  });
});
