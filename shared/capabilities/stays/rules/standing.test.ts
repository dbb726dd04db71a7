/** What a stay's own facts say: design, section 1 and rule 2. Who may free what: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { begun, hours, recordOf, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { arrivalOf, attachmentsForPlan, standingOf } from './standing.ts';

const of = (...told: readonly Told[]) => standingOf(effectiveFacts(stayOf(...told)).facts);
const fact = (
  type: string,
  at: number,
  payload: unknown,
  role: Told['role'] = 'nurse',
  id?: string,
): Told => ({
  type,
  at,
  payload,
  role,
  ...(id ? { id } : {}),
});
const weighed = (at: number, kg: number, role: Told['role'] = 'nurse', id = `w${kg}`) =>
  fact('weight-recorded', at, { weight: { kg, how: 'measured' } }, role, id);
const drain = { attachment: 'd', kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: false };
const attached = (at: number, more: object = {}, id = `a${at}`): Told =>
  fact('attachment-added', at, { ...drain, ...more }, 'nurse', id);
const removed = (at: number, role: Told['role'] = 'nurse', attachment = 'd'): Told =>
  fact('attachment-removed', at, { attachment, kind: 'chest-drain' }, role, `r${at}`);
const scope = (at: number, payload: object, role: Told['role'] = 'nurse'): Told =>
  fact('scope-set', at, payload, role, `s${at}`);

describe('a stay of which nothing was told but the arrival', () => {
  it('is on the ward, under the staged check, with nothing known', () => {
    expect(of()).toEqual({
      began: hours(0),
      away: null,
      scope: { kind: 'staged', fence: null, plan: null },
      scopeFact: null,
      usualWay: null,
      usualWayFact: null,
      weight: null,
      attachments: [],
      wall: 'as-ward',
      conflicts: [],
    });
    expect(standingOf([]).began).toBeNull();
  });
});

describe('the entry of the arrival', () => {
  const arrival = { type: 'stay-begun', id: 'arrived', payload: begun().payload, at: 0 };
  it('is found wherever it stands among the entries', () => {
    expect(arrivalOf(effectiveFacts(recordOf([arrival, weighed(1, 80)])).facts)).toBe('arrived');
    // Told with a time before the arrival, an entry stands before it.
    const { facts } = effectiveFacts(recordOf([arrival, weighed(-1, 80), attached(1)]));
    expect(facts.map((f) => f.id)).toEqual(['w80', 'arrived', 'a1']);
    expect(arrivalOf(facts)).toBe('arrived');
  });
  it('is none where it is not among them', () => {
    expect(arrivalOf(effectiveFacts(recordOf([weighed(1, 80)])).facts)).toBeNull();
    expect(arrivalOf([])).toBeNull();
  });
});

describe('where the person is', () => {
  const off = (at: number, more: object = {}) => fact('went-off-ward', at, { reason: 'dialysis', ...more });
  it('is off the ward with the reason, and back', () => {
    expect(of(off(1)).away).toEqual({ since: hours(1), reason: 'dialysis', dueBack: null });
    expect(of(off(1, { dueBack: toIso(hours(4)) })).away).toMatchObject({ dueBack: hours(4) });
    expect(of(off(1), fact('came-back', 2, {})).away).toBeNull();
  });
});

describe('how the person usually moves, and what walls say of them', () => {
  it('is what was told last', () => {
    const usual = (moves: string) => ({ usual: { moves, transfers: 'alone', stairs: 'yes' } });
    const told = of(
      fact('usual-way-recorded', 1, usual('walks')),
      fact('usual-way-recorded', 2, usual('frame'), 'aide', 'u'),
    );
    expect(told.usualWay).toEqual(usual('frame').usual);
    expect(told.usualWayFact).toMatchObject({ id: 'u', occurred: hours(2) });
    const wall = (at: number, showing: string) => fact('wall-showing-set', at, { showing });
    expect(of(wall(1, 'nothing')).wall).toBe('nothing');
    expect(of(wall(1, 'nothing'), wall(2, 'as-ward')).wall).toBe('as-ward');
  });
});

describe('which plan applies', () => {
  const plan = { ref: 'text-1' };
  const clinicians = { scope: 'clinicians-plan', fence: 'traction', plan };
  it('has the fence of a clinician’s plan, and the words of either plan', () => {
    expect(of(scope(1, clinicians))).toMatchObject({
      scope: { kind: 'clinicians-plan', fence: 'traction', plan },
      scopeFact: { id: 's1' },
    });
    expect(of(scope(1, { scope: 'comfort', plan })).scope).toEqual({ kind: 'comfort', fence: null, plan });
    expect(of(scope(1, { scope: 'comfort' })).scope).toEqual({ kind: 'comfort', fence: null, plan: null });
    expect(of(scope(1, clinicians), scope(2, { scope: 'staged' })).scope).toEqual({
      kind: 'staged',
      fence: null,
      plan: null,
    });
  });
  it('guards no less by the word of someone who may not free', () => {
    const [comfort, staged] = [{ scope: 'comfort' }, { scope: 'staged' }];
    const after = (first: object, then: object) => of(scope(1, first), scope(2, then, 'aide'));
    expect(after(clinicians, staged)).toMatchObject({
      scope: { kind: 'clinicians-plan' },
      scopeFact: { id: 's1' },
    });
    expect(after(clinicians, comfort).scope.kind).toBe('clinicians-plan');
    expect(after(staged, comfort).scope.kind).toBe('staged');
    expect(after(comfort, staged).scope.kind).toBe('staged');
    expect(after(staged, clinicians).scope.kind).toBe('clinicians-plan');
    expect(after(clinicians, { ...clinicians, fence: 'under-18' }).scope.fence).toBe('under-18');
    const spine = { ...clinicians, fence: 'unstable-spine-pelvis-or-long-bone' };
    expect(after(spine, clinicians).scope.fence).toBe(spine.fence);
    expect(after(clinicians, spine).scope.fence).toBe(spine.fence);
    expect(of(scope(1, spine), scope(2, clinicians)).scope.fence).toBe('traction');
    expect(of(scope(1, clinicians), scope(2, comfort)).scope.kind).toBe('comfort');
  });
});

describe('a weight', () => {
  const kg = (...told: readonly Told[]) => of(...told).weight?.value.kg ?? null;
  it('is the last of somebody qualified, lighter or heavier', () => {
    expect(kg(weighed(1, 80), weighed(2, 70))).toBe(70);
    expect(kg(weighed(1, 80), weighed(2, 90, 'therapist'))).toBe(90);
    expect(of(weighed(1, 80)).weight).toEqual({
      value: { kg: 80, how: 'measured' },
      fact: 'w80',
      at: hours(1),
    });
  });
  it('of the same instant is the heavier one, whichever came first', () => {
    expect(kg(weighed(1, 80, 'nurse', 'a'), weighed(1, 70, 'nurse', 'b'))).toBe(80);
    expect(kg(weighed(1, 80, 'nurse', 'b'), weighed(1, 70, 'nurse', 'a'))).toBe(80);
    expect(of(weighed(1, 80, 'nurse', 'a'), weighed(1, 70, 'nurse', 'b')).conflicts).toEqual([]);
  });
  it('by someone who may not free counts only where it is heavier than what is known', () => {
    expect(kg(weighed(1, 80), weighed(2, 90, 'aide'))).toBe(90);
    expect(of(weighed(1, 80), weighed(2, 90, 'aide')).conflicts).toEqual([]);
    expect(kg(weighed(1, 80), weighed(2, 70, 'aide'))).toBe(80);
    // The same weight is no heavier: the nurse's entry goes on standing.
    expect(of(weighed(1, 80), weighed(2, 80, 'aide', 'w')).weight).toMatchObject({ fact: 'w80' });
    expect(of(weighed(1, 80), weighed(2, 70, 'aide')).conflicts).toEqual([
      {
        question: 'weight',
        safer: 'w80',
        other: 'w70',
        words:
          'Weight read by someone who may not free: the heavier one before it still counts until a nurse records it',
      },
    ]);
  });
  it('is not begun by someone who may not free: an unknown one asks for the most', () => {
    const first = of(weighed(1, 300, 'aide'));
    expect(first.weight).toBeNull();
    // The arrival is the first entry of the history: it stands for the unknown weight.
    expect(first.conflicts).toEqual([
      {
        question: 'weight',
        safer: 'e00001',
        other: 'w300',
        words: 'Weight read by someone who may not free: "unknown" still counts until a nurse records it',
      },
    ]);
    const { facts } = effectiveFacts(stayOf(weighed(1, 300, 'aide')));
    const withoutArrival = facts.filter((f) => f.type !== 'stay-begun');
    expect(standingOf(withoutArrival).conflicts).toMatchObject([{ safer: 'w300', other: 'w300' }]);
  });
});

describe('what is attached', () => {
  it('is told to the plan in the order it was added, with its entry', () => {
    const line = { attachment: 'l', kind: 'iv-line', disconnects: 'anyone-trained', needsOwnPerson: true };
    expect(attachmentsForPlan(of(attached(1), attached(2, line)))).toEqual([
      {
        value: { kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: false },
        fact: 'a1',
        at: hours(1),
      },
      {
        value: { kind: 'iv-line', disconnects: 'anyone-trained', needsOwnPerson: true },
        fact: 'a2',
        at: hours(2),
      },
    ]);
  });
  it('is taken out by somebody qualified; by anyone else it is still counted, and both are shown', () => {
    expect(of(attached(1), removed(2))).toMatchObject({ attachments: [], conflicts: [] });
    const disputed = of(attached(1), removed(2, 'aide'));
    expect(disputed.attachments.map((a) => a.fact.id)).toEqual(['a1']);
    expect(disputed.conflicts).toEqual([
      {
        question: 'attachment: d',
        safer: 'a1',
        other: 'r2',
        words: 'chest drain said to be removed, by someone who may not free: still counted',
      },
    ]);
  });
  it('leaves alone what nobody had said was there, and what else is', () => {
    expect(of(removed(2, 'aide'))).toMatchObject({ attachments: [], conflicts: [] });
    expect(of(attached(1), removed(2, 'nurse', 'another')).attachments).toHaveLength(1);
  });

  const twice = (a: object, b: object) => attachmentsForPlan(of(attached(1, a), attached(2, b)));
  it.each(['chest-drain', 'oxygen-cylinder'])('told twice stays a %s, which asks for a person', (kind) => {
    expect(twice({ kind }, { kind: 'other' })).toMatchObject([{ value: { kind }, fact: 'a2' }]);
    expect(twice({ kind: 'other' }, { kind })).toMatchObject([{ value: { kind } }]);
    expect(twice({ kind: 'other' }, { kind: 'monitor' })).toMatchObject([{ value: { kind: 'monitor' } }]);
  });
  it.each([
    ['nobody', 'nurse', 'nobody'],
    ['nobody', 'anyone-trained', 'nobody'],
    ['nurse', 'anyone-trained', 'nurse'],
    ['nurse', 'nurse', 'nurse'],
  ])('told twice, disconnected by %s and by %s, is disconnected by %s', (a, b, fewest) => {
    expect(twice({ disconnects: a }, { disconnects: b })).toMatchObject([{ value: { disconnects: fewest } }]);
    expect(twice({ disconnects: b }, { disconnects: a })).toMatchObject([{ value: { disconnects: fewest } }]);
  });
  it('told twice needs a person to itself when either said so', () => {
    const asks = (a: boolean, b: boolean) =>
      twice({ needsOwnPerson: a }, { needsOwnPerson: b })[0]!.value.needsOwnPerson;
    expect([asks(true, false), asks(false, true), asks(true, true), asks(false, false)]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });
  it('put in again after it was taken out is as it was told then', () => {
    const again = of(attached(1, { needsOwnPerson: true }), removed(2), attached(3));
    expect(attachmentsForPlan(again)).toMatchObject([{ value: { needsOwnPerson: false }, fact: 'a3' }]);
  });
});
