/** Unconfirmed, confirmed and co-signed entries of one stay: whose word counts, and from when. */
import { describe, expect, it } from 'vitest';
import {
  calendar,
  check,
  confirm,
  confirmation,
  correct,
  cosignature,
  hold,
  hours,
  onOwn,
  order,
  retract,
  session,
  stayOf,
  trigger,
  unconfirmed,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { lessHelp } from '../../board/rules/less-help.testkit.ts';
import { effectiveFacts } from './effective.ts';

const weighed: Told = {
  type: 'weight-recorded',
  at: 0.5,
  payload: { weight: { kg: 70, how: 'measured' } },
};
const base = [weighed, { ...check('edge', 1), id: 'first' }];
const at = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...base, ...told), ward, calendar, hours(h)).view;
const walks: Told = { ...check('walk', 2), id: 'walks' };
const claimed = unconfirmed(walks, 'therapist');
const stoodBy = (h: number, more: Partial<Told> = {}): Told => ({
  ...confirmation(h, 'walks', 'therapist'),
  id: 'stood-by',
  ...more,
});
const factOf = (id: string, ...told: readonly Told[]) =>
  effectiveFacts(stayOf(...told)).facts.find((f) => f.id === id);

describe('an entry under a name that nobody had checked', () => {
  it('clears no stage, though the person it names could', () => {
    expect(at(3, walks).tier.word).toBe('Walk');
    expect(at(3, claimed).tier.word).toBe('Edge');
  });
  it('counts where it finds less', () => {
    const worse = unconfirmed({ ...check('edge', 2, { edge: { outcome: 'not-met' } }), id: 'worse' });
    expect(at(3, worse).tier.word).toBe('Upright');
  });
  it('is an aide’s even where a log has the claimed role beside it', () => {
    expect(at(3, { ...claimed, role: 'therapist' }).tier.word).toBe('Edge');
    expect(factOf('walks', { ...claimed, role: 'therapist' })?.author).toEqual({
      staff: 'staff-therapist',
      role: 'aide',
    });
  });

  // Everything that only a nurse or therapist may say, each as it could be claimed.
  const held: Told = { ...hold(1.5, 'walking', 40), id: 'held' };
  const drain = { attachment: 'd', kind: 'chest-drain' };
  it.each<[string, readonly Told[], Told]>([
    ['"on own"', [walks], onOwn(3)],
    [
      'the end of a hold',
      [walks, held],
      { type: 'hold-ended', payload: { hold: 'hold-1', placedBy: 'held' } },
    ],
    [
      'a later review of a hold',
      [walks, held],
      { type: 'hold-renewed', payload: { hold: 'hold-1', reviewAt: new Date(hours(90)).toISOString() } },
    ],
    [
      'an order taken off',
      [walks, order(1.5, { about: 'activity', most: 'chair' })],
      order(3, { about: 'activity', most: 'no-limit' }),
    ],
    [
      'a drain taken out',
      [
        walks,
        {
          type: 'attachment-added',
          at: 1.5,
          payload: { ...drain, disconnects: 'nurse', needsOwnPerson: true },
        },
      ],
      { type: 'attachment-removed', payload: drain },
    ],
    ['a plan confirmed', [walks, trigger('sedation', 2.5)], confirm(3, 'walks')],
    ['"seen walking"', [], { type: 'seen-walking', payload: { walkingSupport: 'none' } }],
    ['a lighter weight', [walks], { ...weighed, payload: { weight: { kg: 45, how: 'measured' } } }],
    [
      'the comfort plan taken back',
      [
        walks,
        {
          type: 'scope-set',
          at: 1.5,
          payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } },
        },
      ],
      { type: 'scope-set', payload: { scope: 'staged' } },
    ],
    [
      'walking measures turned on',
      [walks],
      { type: 'walking-measures-switched', payload: { on: true }, role: 'therapist' },
    ],
    ['a first time up', [trigger('return-from-surgery', 1.5)], session(3, { firstTimeUp: true })],
    ['a correction', [walks, held], correct(3, 'held', hold(1.5, 'standing', 2))],
    ['a retraction', [walks, held], retract(3, 'held')],
  ])('CLAIMED-1 frees nothing: %s', (_what, before, said) => {
    const extra = unconfirmed({ ...said, at: 3, id: 'x' }, said.role ?? 'nurse');
    const [was, is] = [at(4, ...before), at(4, ...before, extra)];
    expect(lessHelp(was, is)).toEqual([]);
    expect(is.holds.map((h) => h.reviewAt)).toEqual(was.holds.map((h) => h.reviewAt));
    expect(is.scope).toEqual(was.scope);
    expect(is.onOwn).toBeNull();
    expect(is.measures).toBeNull();
    expect(is.orders).toEqual(was.orders);
    expect(is.attachments).toEqual(was.attachments);
    expect(is.firstTimeUpPending).toBe(was.firstTimeUpPending);
  });
});

describe('a confirmation', () => {
  it('CLAIMED-2 makes the entry its author’s, in the role they have when they confirm', () => {
    expect(factOf('walks', claimed, stoodBy(3))?.author).toEqual({
      staff: 'staff-therapist',
      role: 'therapist',
    });
    expect(at(4, claimed, stoodBy(3)).tier.word).toBe('Walk');
  });
  it.each<[string, Told]>([
    ['somebody else', stoodBy(3, { staff: 'staff-nurse', role: 'nurse' })],
    ['a name that is only claimed again', unconfirmed(stoodBy(3), 'therapist')],
    ['somebody who by now may not free', stoodBy(3, { role: 'aide' })],
  ])('CLAIMED-2 changes nothing from %s', (_who, said) => {
    const { version: _v, ...view } = at(4, claimed, said);
    const { version: _w, ...without } = at(4, claimed);
    expect(view).toEqual(without);
  });
  it('CLAIMED-3 that may lower help asks for a look, as a correction would, and one that cannot does not', () => {
    expect(at(4, claimed, stoodBy(3)).trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'stood-by' }],
    });
    const fell = unconfirmed({ ...trigger('faint', 2), id: 'walks' }, 'therapist');
    expect(at(4, fell, stoodBy(3)).trust.openTriggers.map((o) => o.kind)).toEqual(['faint']);
  });
  it('CLAIMED-3 counts no more than before while something that came after the entry is open, and both are shown', () => {
    const fell = { ...trigger('sedation', 2.5), id: 'fell' };
    const [was, is] = [at(4, claimed, fell), at(4, claimed, fell, stoodBy(3))];
    expect(lessHelp(was, is)).toEqual([]);
    expect(is.tier.word).toBe('Edge');
    expect(is.trust.conflicts).toContainEqual({
      question: 'correction',
      safer: 'fell',
      other: 'stood-by',
      words:
        'An entry confirmed, and something that occurred at or after it is still open: the safer stands; tell both authors',
    });
    // A later check answers what was open; then the entry counts.
    expect(at(6, claimed, fell, stoodBy(3), check('edge', 5)).tier.word).toBe('Walk');
  });
  it('is of what the entry said: a correction in its place stays as it is', () => {
    const corrected: Told = { ...correct(2.5, 'walks', check('stand', 2), 'charge-nurse'), id: 'c' };
    expect(factOf('walks', claimed, corrected, stoodBy(3))).toMatchObject({
      correctedBy: 'c',
      author: { role: 'charge-nurse' },
    });
    expect(factOf('walks', claimed, stoodBy(3), { ...corrected, at: 3.5 })).toMatchObject({
      correctedBy: 'c',
      author: { role: 'charge-nurse' },
    });
  });
  it('of a withdrawn entry brings nothing back, and withdrawn itself counts no more', () => {
    expect(factOf('walks', claimed, retract(2.5, 'walks'), stoodBy(3))).toBeUndefined();
    expect(factOf('walks', claimed, stoodBy(3), retract(3.5, 'stood-by'))?.author.role).toBe('aide');
    // Withdrawn by somebody who may not free it stands, and both are shown.
    const { facts, conflicts } = effectiveFacts(
      stayOf(claimed, stoodBy(3), { ...retract(3.5, 'stood-by', 'aide'), id: 'r' }),
    );
    expect(facts.find((f) => f.id === 'walks')?.author.role).toBe('therapist');
    expect(conflicts).toMatchObject([{ safer: 'stood-by', other: 'r' }]);
  });
  it('is no fact of its own, and neither is a second signature', () => {
    const { facts, cosigned, confirmed } = effectiveFacts(
      stayOf({ ...claimed, source: { kind: 'person', unconfirmed: true, cosign: 'student' } }, stoodBy(3), {
        ...cosignature(3, 'walks'),
        id: 'second',
      }),
    );
    expect(facts.map((f) => f.type)).toEqual(['stay-begun', 'assessment-recorded']);
    expect([...confirmed].map(([id, by]) => [id, by.id])).toEqual([['walks', 'stood-by']]);
    expect([...cosigned].map(([id, by]) => [id, by.id])).toEqual([['walks', 'second']]);
  });
});

describe('what walls show of a person', () => {
  const showing = (h: number, what: 'as-ward' | 'nothing', more: Partial<Told> = {}): Told => ({
    type: 'wall-showing-set',
    at: h,
    payload: { showing: what },
    ...more,
  });
  it('is what the ward’s walls show of everybody until somebody says nothing, and back again', () => {
    expect(at(4).wall).toBe('as-ward');
    expect(at(4, showing(3, 'nothing')).wall).toBe('nothing');
    expect(at(4, showing(2, 'nothing'), showing(3, 'as-ward')).wall).toBe('as-ward');
  });
  it('is the more private of two said at one instant, and nothing else of the row changes', () => {
    expect(at(4, showing(3, 'as-ward', { id: 'z' }), showing(3, 'nothing', { id: 'a' })).wall).toBe(
      'nothing',
    );
    const { version: _v, wall: _wall, ...row } = at(4, showing(3, 'nothing'));
    const { version: _w, wall: _as, ...without } = at(4);
    expect(row).toEqual(without);
  });
});
