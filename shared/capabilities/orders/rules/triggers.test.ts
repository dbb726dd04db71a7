/** What opens and closes a trigger: users-job.md 3a and the design's trust row; otherwise common practice, no source. */
import { describe, expect, it } from 'vitest';
import {
  check,
  confirm,
  order,
  retract,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { recordedTriggerKind } from '../values.ts';
import { triggersOf } from './triggers.ts';

function open(...told: readonly Told[]): string[] {
  const { facts, lookAgain } = effectiveFacts(stayOf({ ...check('edge', 0.5), id: 'first' }, ...told));
  return triggersOf(facts, lookAgain, protocolLookup([])).open.map((o) => o.kind);
}
const drain: Told = {
  type: 'attachment-added',
  at: 1,
  payload: { attachment: 'd', kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: false },
};

describe('a trigger', () => {
  it('is the arrival itself, until the first check', () => {
    const { facts } = effectiveFacts(stayOf());
    expect(triggersOf(facts, [], protocolLookup([])).open).toMatchObject([{ kind: 'arrival' }]);
    expect(open()).toEqual([]);
  });
  it.each([
    ['lowered to the floor', session(1, { events: ['lowered-to-floor'] }), 'fall'],
    ['a near-fall', session(1, { events: ['near-fall'] }), 'failed-attempt'],
    ['dizziness', session(1, { events: ['dizzy'] }), 'failed-attempt'],
    ['stopping early', session(1, { outcome: 'stopped' }), 'failed-attempt'],
    ['an order', order(1, { about: 'activity', most: 'walk' }), 'order-change'],
    ['an attachment', drain, 'attachment-change'],
  ] as const)('is also %s', (_what, told, kind) => {
    expect(open(told)).toEqual([kind]);
  });
  it('is not an ordinary session', () => {
    expect(open(session(1), session(2, { events: ['equipment-fault'] }))).toEqual([]);
  });

  it('is closed by a later check of a qualified author', () => {
    expect(open(trigger('fall', 1), check('edge', 2))).toEqual([]);
    expect(open(trigger('fall', 1), { ...check('edge', 2), role: 'aide' })).toEqual(['fall']);
  });
  it('is not closed by a check that occurred before it, however late either arrived', () => {
    expect(open(check('walk', 2), trigger('fall', 3))).toEqual(['fall']);
    expect(open(trigger('fall', 3), check('walk', 2))).toEqual(['fall']);
  });
  it('of the same instant as a check stays open, unless the check names it', () => {
    const fall = { ...trigger('fall', 2), id: 'f' };
    expect(open(fall, check('edge', 2))).toEqual(['fall']);
    expect(open(fall, check('edge', 2, {}, { answers: ['f'] }))).toEqual([]);
  });
  it('of faint or bleed needs the pressure set, or to be named', () => {
    const faint = { ...trigger('faint', 1), id: 'f' };
    expect(open(faint, check('edge', 2))).toEqual(['faint']);
    expect(open(faint, check('edge', 2, {}, { depth: 'full-with-pressure' }))).toEqual([]);
    expect(open(faint, check('edge', 2, {}, { answers: ['f'] }))).toEqual([]);
  });
  it('of a fall needs a check as far as what stood cleared, or one that found less, named or not', () => {
    const walks = check('walk', 0.6);
    const fall = { ...trigger('fall', 1), id: 'f' };
    expect(open(walks, fall, check('upright', 2))).toEqual(['fall']);
    expect(open(walks, fall, check('upright', 2, {}, { answers: ['f'] }))).toEqual(['fall']);
    expect(open(walks, fall, check('walk', 2))).toEqual([]);
    expect(open(walks, fall, check('stand', 2, { stand: { outcome: 'not-met' } }))).toEqual([]);
    // A sedative given asks for a look and nothing more.
    expect(open(walks, trigger('sedation', 1), check('upright', 2))).toEqual([]);
  });
  it('of an order is not closed by a check that goes beyond that order', () => {
    const bed = { ...order(1, { about: 'activity', most: 'bed' }), id: 'o' };
    expect(open(bed, check('walk', 2))).toEqual(['order-change']);
    expect(open(bed, check('upright', 2))).toEqual([]);
    expect(open(bed, check('walk', 2, {}, { answers: ['o'] }))).toEqual([]);
  });
  it('is closed by a confirm only when it is a light one, and only by a nurse or the like', () => {
    expect(open(drain, confirm(2, 'first'))).toEqual([]);
    expect(open(drain, confirm(2, 'first', 'aide'))).toEqual(['attachment-change']);
    expect(open(trigger('fall', 1), confirm(2, 'first'))).toEqual(['fall']);
  });
});

const kinds = recordedTriggerKind.options;
const AS_FAR = [
  'fall',
  'faint',
  'seizure',
  'low-glucose',
  'bleed',
  'transfusion',
  'new-symptom',
  'new-confusion',
  'suspected-clot',
  'sheath-out',
  'block-on',
  'block-off',
  'failed-attempt',
  'step-down-from-intensive-care',
];

describe('what a check must show to answer', () => {
  it.each(kinds)('%s: as far as what stands cleared, for what may have taken it away', (kind) => {
    const walks = check('walk', 0.6);
    const lying = check('upright', 2, {}, { depth: 'full-with-pressure' });
    const told = [walks, { ...trigger(kind, 1), id: 'k' }];
    expect(open(...told)).toEqual([kind]);
    expect(open(...told, lying)).toEqual(AS_FAR.includes(kind) ? [kind] : []);
    expect(open(...told, check('walk', 2, {}, { depth: 'full-with-pressure' }))).toEqual([]);
  });
  it.each(kinds)('%s: with the pressure set after a faint or a bleed', (kind) => {
    const needs = kind === 'faint' || kind === 'bleed';
    expect(open(trigger(kind, 1), check('edge', 2))).toEqual(needs ? [kind] : []);
  });
  it.each(kinds)('%s: a confirm answers the light ones alone', (kind) => {
    const light = ['attachment-change', 'asked-to-look-again', 'board-wrong'].includes(kind);
    expect(open(trigger(kind, 1), confirm(2, 'first'))).toEqual(light ? [] : [kind]);
    expect(open(trigger(kind, 2), confirm(2, 'first'))).toEqual([kind]);
  });
  it('as far counts from what the checks cleared together, and less where one was not met', () => {
    const fall = trigger('fall', 1);
    // Cleared to Walk, then Turn not met: up to Stand is as far as what still stands.
    const lost = check('turn', 0.8, { turn: { outcome: 'not-met' } });
    expect(open(check('walk', 0.6), lost, fall, check('stand', 2))).toEqual([]);
    expect(open(check('walk', 0.6), lost, fall, check('edge', 2))).toEqual(['fall']);
    // A shorter check in between takes nothing away.
    expect(open(check('walk', 0.6), check('edge', 0.8), fall, check('stand', 2))).toEqual(['fall']);
    // A stage not met far below what was not cleared anyway clears nothing.
    const above = check('walk', 0.8, { walk: { outcome: 'not-met' } });
    expect(open(check('stand', 0.6), above, fall, check('stand', 2))).toEqual([]);
    expect(open(check('stand', 0.6), above, fall, check('edge', 2))).toEqual(['fall']);
  });
  it('a check in which nothing was tested answers nothing', () => {
    const { payload, ...rest } = check('edge', 2);
    const { stages } = payload as { stages: { stage: string; at: string }[] };
    const notTested = stages.map(({ stage, at }) => ({
      stage,
      at,
      outcome: 'not-tested',
      reason: 'asleep',
      how: 'free',
      people: 1,
      findings: [],
      symptom: false,
    }));
    const nothing: Told = { ...rest, payload: { ...(payload as object), stages: notTested } };
    expect(open(trigger('sedation', 1), nothing)).toEqual(['sedation']);
  });
  it('one check answers those before it, in any number, and leaves those after it', () => {
    expect(
      open(trigger('fall', 1), trigger('sedation', 1.5), check('edge', 2), trigger('seizure', 3)),
    ).toEqual(['seizure']);
  });
  it('of the same instant, named, still has to go as far after a fall', () => {
    const fall = { ...trigger('fall', 2), id: 'f' };
    const sedated = { ...trigger('sedation', 2), id: 's' };
    const lying = check('upright', 2, {}, { answers: ['f', 's'] });
    expect(open(check('walk', 0.6), fall, sedated, lying)).toEqual(['fall']);
    // Named by a check of another instant, the trigger is as open as any.
    expect(open(check('edge', 1, {}, { answers: ['f'] }), fall)).toEqual(['fall']);
  });
});

describe('the staged check that applies again', () => {
  const scope = (at: number, to: string, role: Told['role'] = 'nurse'): Told => ({
    type: 'scope-set',
    at,
    role,
    payload: { scope: to },
  });
  const fenced: Told = {
    type: 'scope-set',
    at: 2,
    payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } },
  };
  it('asks to look again, once the plan was another and a qualified person ends that', () => {
    expect(open(scope(1, 'comfort'))).toEqual([]);
    expect(open(scope(1, 'comfort'), scope(2, 'staged'))).toEqual(['asked-to-look-again']);
    expect(open(scope(1, 'comfort'), scope(2, 'staged'), confirm(3, 'first'))).toEqual([]);
    expect(open(scope(2, 'staged'))).toEqual([]);
    // From one plan to another the staged check does not apply again yet.
    expect(open(scope(1, 'comfort'), fenced)).toEqual([]);
    expect(open(fenced, scope(3, 'comfort'))).toEqual([]);
    expect(open(fenced, scope(3, 'staged'))).toEqual(['asked-to-look-again']);
    expect(open(scope(1, 'comfort'), scope(2, 'staged', 'aide'))).toEqual(['asked-to-look-again']);
    expect(open(scope(1, 'comfort', 'aide'), scope(2, 'staged'))).toEqual([]);
    expect(open(scope(1, 'comfort'), scope(2, 'staged', 'aide'), scope(3, 'staged'))).toEqual([
      'asked-to-look-again',
    ]);
    expect(open(scope(1, 'comfort'), scope(2, 'staged'), check('edge', 3), scope(4, 'staged'))).toEqual([]);
  });
  it('says so', () => {
    const { facts } = effectiveFacts(stayOf(scope(1, 'comfort'), scope(2, 'staged')));
    expect(triggersOf(facts, [], protocolLookup([])).open.map((o) => o.words)).toEqual([
      'Arrived, not checked here yet',
      'The staged check applies again: look before the next move',
    ]);
  });
});

describe('a withdrawn or corrected entry', () => {
  const fell = { ...trigger('fall', 1), id: 'f' };
  it('asks to look again until a check or a nurse’s confirm after it', () => {
    const withdrawn = retract(3, 'f');
    expect(open(fell, withdrawn)).toEqual(['asked-to-look-again']);
    expect(open(fell, withdrawn, check('edge', 3))).toEqual(['asked-to-look-again']);
    expect(open(fell, withdrawn, check('edge', 3.5))).toEqual([]);
    expect(open(fell, withdrawn, confirm(3.5, 'first'))).toEqual([]);
    expect(open(fell, withdrawn, confirm(3.5, 'first', 'aide'))).toEqual(['asked-to-look-again']);
  });
});

describe('the list of triggers', () => {
  it('is the oldest first, whatever came late, and of one instant by entry', () => {
    const { facts, lookAgain } = effectiveFacts(
      stayOf(
        { ...trigger('fall', 1), id: 'f' },
        { ...trigger('sedation', 4), id: 'b' },
        { ...trigger('seizure', 4), id: 'a' },
        retract(2, 'f'),
      ),
    );
    const { seen, open: still } = triggersOf(facts, lookAgain, protocolLookup([]));
    const expected = ['arrival', 'asked-to-look-again', 'seizure', 'sedation'];
    expect(seen.map((x) => x.kind)).toEqual(expected);
    expect(still.map((x) => x.kind)).toEqual(expected);
    expect(triggersOf(facts.toReversed(), lookAgain, protocolLookup([])).seen.map((x) => x.kind)).toEqual(
      expected,
    );
  });
});
