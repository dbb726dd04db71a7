/** What a trigger says of itself, and those that only the limits of the ward make of an entry. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { check, hours, session, stayOf, trigger, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { isConfirm, triggerOf, triggersOf } from './triggers.ts';

const factOf = (told: Told) => effectiveFacts(stayOf(told)).facts.at(-1)!;
const weighed: Told = { type: 'weight-recorded', at: 1, payload: { weight: { kg: 80, how: 'measured' } } };

describe('the words of a trigger', () => {
  it.each([
    [
      'a session with a near-fall',
      session(1, { events: ['near-fall'] }),
      'Something went wrong in a session: near fall',
    ],
    [
      'a session stopped, nothing named',
      session(1, { outcome: 'stopped' }),
      'An attempt failed or was stopped',
    ],
    ['an attempt told as failed', trigger('failed-attempt', 1), 'An attempt failed or was stopped'],
    ['a session lowered to the floor', session(1, { events: ['lowered-to-floor'] }), 'Fall'],
    ['a fall', trigger('fall', 1), 'Fall'],
  ] as const)('given %s, say what it was', (_, told, words) => {
    expect(triggerOf(factOf(told))).toMatchObject({ at: hours(1), words });
  });
  it('given an entry that is no trigger, there are none', () => {
    expect(triggerOf(factOf(weighed))).toBeNull();
    expect(triggerOf(factOf(session(1)))).toBeNull();
  });
});

describe('a limit of the ward that an entry passed', () => {
  const PASSED = 'A stop limit was passed: heart rate 131 is above 130';
  const RISEN = 'Early-warning score 6, 5 or more';
  const of =
    (...ids: readonly string[]) =>
    (words: string) =>
      new Map(ids.map((id) => [id as EventId, words]));
  const open = (
    told: readonly Told[],
    rises: ReadonlyMap<EventId, string>,
    beyondStop: ReadonlyMap<EventId, string>,
  ) =>
    triggersOf(
      effectiveFacts(stayOf(check('walk', 0.5), ...told)).facts,
      [],
      protocolLookup([]),
      rises,
      beyondStop,
    ).open;
  const walked = (extra: Record<string, unknown> = {}): Told => ({ ...session(1, extra), id: 'walked' });
  const beyond = (...told: readonly Told[]) => open(told, new Map(), of('walked')(PASSED));

  it('makes a failed attempt of an ordinary session', () => {
    expect(beyond(walked())).toEqual([
      { event: 'walked', kind: 'failed-attempt', at: hours(1), words: PASSED },
    ]);
    expect(beyond({ ...walked(), id: 'another' })).toEqual([]);
  });
  it.each([
    [
      'stopped',
      walked({ outcome: 'stopped' }),
      'failed-attempt',
      `An attempt failed or was stopped. ${PASSED}`,
    ],
    [
      'in which something went wrong',
      walked({ events: ['near-fall'] }),
      'failed-attempt',
      `Something went wrong in a session: near fall. ${PASSED}`,
    ],
    ['lowered to the floor', walked({ events: ['lowered-to-floor'] }), 'fall', 'Fall'],
  ] as const)(
    'given a session %s, is said beside a failed attempt and changes no fall',
    (_, told, kind, words) => {
      expect(beyond(told)).toEqual([{ event: 'walked', kind, at: hours(1), words }]);
    },
  );
  it('given a session stopped within the limits, adds nothing', () => {
    expect(beyond({ ...walked({ outcome: 'stopped' }), id: 'another' })).toMatchObject([
      { words: 'An attempt failed or was stopped' },
    ]);
  });
  it('makes a rise of a score; a check answers either only as far as what stands cleared', () => {
    const scored: Told = {
      type: 'early-warning-recorded',
      at: 1,
      id: 'scored',
      payload: { score: 6, anyThree: false, scale: 1 },
    };
    const risen = (...told: readonly Told[]) => open([scored, ...told], of('scored')(RISEN), new Map());
    expect(risen()).toEqual([{ event: 'scored', kind: 'early-warning-rise', at: hours(1), words: RISEN }]);
    expect(risen(check('upright', 2))).toHaveLength(1);
    expect(risen(check('walk', 2))).toEqual([]);
    expect(open([scored], new Map(), new Map())).toEqual([]);
    expect(beyond(walked(), check('upright', 2))).toHaveLength(1);
    expect(beyond(walked(), check('walk', 2))).toEqual([]);
  });
});

describe('a light trigger', () => {
  const asked = trigger('asked-to-look-again', 0.8);
  it('is answered by no entry of a nurse but a confirm or a check', () => {
    const { facts } = effectiveFacts(stayOf(check('edge', 0.5), asked, weighed));
    expect(triggersOf(facts, [], protocolLookup([])).open.map((o) => o.kind)).toEqual([
      'asked-to-look-again',
    ]);
    expect(isConfirm(factOf(weighed))).toBe(false);
  });
});
