/** Which check answers which trigger, at the edges: users-job.md 3a; otherwise common practice, no source. */
import { describe, expect, it } from 'vitest';
import {
  check,
  confirm,
  order,
  session,
  stayOf,
  trigger,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { protocolLookup, type ProtocolLookup } from '../../assessments/rules/protocol.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { triggersOf } from './triggers.ts';

const known = protocolLookup([]);
/** Of a stay that begins with the arrival and nothing else. */
function open(told: readonly Told[], protocols: ProtocolLookup = known): string[] {
  const { facts, lookAgain } = effectiveFacts(stayOf(...told));
  return triggersOf(facts, lookAgain, protocols).open.map((o) => o.kind);
}
/** The check, with one of its stages told as not tested. */
function notTested(stage: StageId, told: Told): Told {
  const payload = told.payload as { stages: readonly { stage: string }[] };
  const stages = payload.stages.map((record) =>
    record.stage === stage
      ? { ...record, outcome: 'not-tested', reason: 'pain', findings: [], symptom: false }
      : record,
  );
  return { ...told, payload: { ...payload, stages } };
}

describe('how far a check goes', () => {
  it('is far enough by any stage, where no check had cleared anything', () => {
    expect(open([trigger('fall', 1), check('clear', 2)])).toEqual([]);
  });
  it('is not far enough by the first stage, where the second had been cleared', () => {
    const sat = check('upright', 0.5);
    expect(open([sat, trigger('fall', 1), check('clear', 2)])).toEqual(['fall']);
    expect(open([sat, trigger('fall', 1), check('upright', 2)])).toEqual([]);
  });
  it('counts from the first of several stages that were not met', () => {
    // Standing was lost with all beyond it: up to the edge is as far as what still stands.
    const lost = { outcome: 'not-met' } as const;
    const fell = [check('walk', 0.5), check('walk', 0.8, { stand: lost, walk: lost }), trigger('fall', 1)];
    expect(open([...fell, check('edge', 2)])).toEqual([]);
    expect(open([...fell, check('upright', 2)])).toEqual(['fall']);
  });
  it('counts no stage that was not tested, and answers by those that were', () => {
    const walked = check('walk', 0.5);
    const fall = trigger('fall', 1);
    expect(open([walked, fall, notTested('walk', check('walk', 2))])).toEqual(['fall']);
    expect(open([check('turn', 0.5), fall, notTested('walk', check('walk', 2))])).toEqual([]);
    // Not cleared either: a later check up to the stage before goes as far.
    expect(open([notTested('walk', check('walk', 0.5)), fall, check('turn', 2)])).toEqual([]);
  });
  it('is nothing, met or not, under a protocol that nobody here can read', () => {
    const unreadable: ProtocolLookup = (id, version) => (version === 9 ? null : known(id, version));
    const foreign = (outcome: 'met' | 'not-met') =>
      check('walk', 2, { walk: { outcome } }, { protocol: { id: 'elsewhere', version: 9 } });
    const told = [check('walk', 0.5), trigger('fall', 1)];
    expect(open([...told, foreign('met')], unreadable)).toEqual(['fall']);
    expect(open([...told, foreign('not-met')], unreadable)).toEqual(['fall']);
    // Any check would do after a sedative, but this one says nothing that can be read.
    expect(open([check('walk', 0.5), trigger('sedation', 1), foreign('met')], unreadable)).toEqual([
      'sedation',
    ]);
  });
});

describe('an attachment that was taken out', () => {
  it('is a trigger, as one put in is', () => {
    const removed: Told = {
      type: 'attachment-removed',
      at: 1,
      payload: { attachment: 'd', kind: 'chest-drain' },
    };
    expect(open([check('edge', 0.5), removed])).toEqual(['attachment-change']);
  });
});

describe('an order that a check went beyond, among other triggers', () => {
  const first = check('edge', 0.5);
  const bed = order(1, { about: 'activity', most: 'bed' });
  it('stays open alone: the others are answered', () => {
    const sedated = trigger('sedation', 1);
    expect(open([first, bed, sedated, check('walk', 2)])).toEqual(['order-change']);
    expect(open([first, sedated, bed, check('walk', 2)])).toEqual(['order-change']);
    expect(open([first, bed, sedated, check('upright', 2)])).toEqual([]);
  });
  it('stays open even when a later order allows what was done', () => {
    const walk = order(3, { about: 'activity', most: 'walk' });
    expect(open([first, bed, check('walk', 2), walk])).toEqual(['order-change', 'order-change']);
    expect(open([first, bed, check('upright', 2), walk])).toEqual(['order-change']);
  });
});

describe('a trigger and a check of the very same instant', () => {
  // Those of one instant stand by rank, then by entry: here each trigger comes before the check.
  const wrong: Told = { ...session(2, { events: ['near-fall'] }), id: 'a' };
  const checked = (answers: readonly string[] = []): Told => ({
    ...check('edge', 2, {}, { answers }),
    id: 'b',
  });
  const removed: Told = {
    type: 'attachment-removed',
    at: 2,
    id: 'a',
    payload: { attachment: 'd', kind: 'chest-drain' },
  };
  const first = { ...check('edge', 0.5), id: 'first' };

  it('leave it open, unless the check names it', () => {
    expect(open([first, wrong, checked()])).toEqual(['failed-attempt']);
    expect(open([first, wrong, checked(['a'])])).toEqual([]);
    expect(open([first, removed, checked()])).toEqual(['attachment-change']);
  });
  it('but for the arrival, which that check answers', () => {
    expect(open([{ ...check('edge', 0), id: 'z' }])).toEqual([]);
  });
  it('leave a light one open when it is a confirm', () => {
    const confirmed = (at: number): Told => ({ ...confirm(at, 'first'), id: 'b' });
    expect(open([first, removed, confirmed(2)])).toEqual(['attachment-change']);
    expect(open([first, removed, confirmed(2.1)])).toEqual([]);
  });
});
