/** What opens and closes a trigger: users-job.md 3a and the design's trust row; otherwise common practice, no source. */
import { describe, expect, it } from 'vitest';
import {
  check,
  confirm,
  order,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
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
    expect(open(session(1), session(2, { events: ['pain'] }))).toEqual([]);
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
