/** Who stands against an entry that speaks of the past: design, rule 2; users-job.md hazard 8. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { check, hours, stayOf, trigger, type Told } from '../../board/rules/history.testkit.ts';
import type { StayRecord } from '../facts.ts';
import { lateClaims, onlySafer, standsAgainst, type Claim, type Restriction } from './claims.ts';
import { effectiveFacts } from './effective.ts';

const late = (...told: readonly Told[]) =>
  lateClaims(effectiveFacts(stayOf(...told)).facts).map((c) => c.event);
const saw = (id: string, at: number, recorded: number): Told => ({ ...check('edge', at), id, recorded });

describe('an entry that may lower help', () => {
  it('is late when something that occurred after it was known before it', () => {
    expect(late(saw('a', 1, 1), saw('b', 2, 2))).toEqual([]);
    expect(late(saw('b', 2, 2), saw('a', 1, 3))).toEqual(['a']);
    expect(late(saw('a', 1, 3), saw('b', 2, 2))).toEqual(['a']);
  });
  it('is late against whatever came after it, of any kind, and is the only one told', () => {
    const fell = { ...trigger('fall', 2), id: 'f', recorded: 2 };
    expect(late(fell, saw('a', 1, 3))).toEqual(['a']);
    // What only raises help is never a claim, however late.
    expect(late(saw('a', 2, 2), { ...trigger('fall', 1), id: 'f', recorded: 3 })).toEqual([]);
    expect(late(saw('c', 3, 3), saw('b', 2, 4), saw('a', 1, 5))).toEqual(['b', 'a']);
  });
  it('is measured against the earliest known of all that came after it', () => {
    // The one just after it came later still; the one after that was known first.
    expect(late(saw('c', 3, 3), saw('a', 1, 4), saw('b', 2, 5))).toEqual(['b', 'a']);
    expect(late(saw('d', 4, 6), saw('c', 3, 3), saw('a', 1, 4))).toEqual(['a']);
  });
  it('recorded in one moment with what came after it goes by the place in the log', () => {
    expect(late(saw('a', 1, 5), saw('b', 2, 5))).toEqual([]);
    expect(late(saw('b', 2, 5), saw('a', 1, 5))).toEqual(['a']);
  });
  it('of the same instant is late when it was recorded later, whichever stands first', () => {
    expect(late(saw('a', 1, 2), saw('b', 1, 3))).toEqual(['b']);
    expect(late(saw('b', 1, 2), saw('a', 1, 3))).toEqual(['a']);
    expect(late(saw('a', 1, 2), saw('m', 1, 2), saw('b', 1, 3))).toEqual(['b']);
    // One that came later than any of the others is enough.
    expect(late(saw('a', 1, 5), saw('m', 1, 2), saw('z', 1, 3))).toEqual(['z', 'a']);
    // Recorded together, neither is the later one.
    expect(late(saw('a', 1, 2), saw('b', 1, 2))).toEqual([]);
    expect(late(saw('b', 1, 2), saw('a', 1, 2))).toEqual([]);
  });
  it('may be of the instant of the arrival, or of before it', () => {
    expect(late(saw('z', 0, 3))).toEqual(['z']);
    expect(late(saw('z', -1, 3))).toEqual(['z']);
    expect(late(saw('z', 0, 0))).toEqual([]);
  });
  it('is told with who said it, when it occurred and when it became known', () => {
    const { facts } = effectiveFacts(stayOf(saw('b', 2, 2), { ...saw('a', 1, 3), role: 'therapist' }));
    expect(lateClaims(facts)).toEqual([
      {
        event: 'a',
        verb: 'late',
        entry: 'a',
        about: hours(1),
        author: { staff: 'staff-therapist', role: 'therapist' },
        occurred: hours(1),
        recorded: hours(3),
        position: 3,
      },
    ]);
  });
});

const id = (value: string) => value as EventId;
const claim = (more: Partial<Claim> = {}): Claim => ({
  event: id('claim'),
  verb: 'late',
  entry: id('claim'),
  about: hours(2),
  author: { staff: 'staff-nurse' as Claim['author']['staff'], role: 'nurse' },
  occurred: hours(2),
  recorded: hours(5),
  position: 9,
  ...more,
});
const open = (more: Partial<Restriction> = {}): Restriction => ({
  event: id('open'),
  occurred: hours(3),
  recorded: hours(3),
  position: 5,
  ...more,
});
const stands = (c: Claim, ...list: readonly Restriction[]) => standsAgainst(c, list)?.event ?? null;

describe('an open restriction', () => {
  it('stands against a late entry when it occurred with or after it and was known before it', () => {
    expect(stands(claim())).toBeNull();
    expect(stands(claim(), open())).toBe('open');
    expect(stands(claim(), open({ occurred: hours(2) }))).toBe('open');
    expect(stands(claim(), open({ occurred: hours(1.9) }))).toBeNull();
    expect(stands(claim(), open({ recorded: hours(6) }))).toBeNull();
  });
  it('recorded in one moment with it stands by its place in the log, unless of the same instant', () => {
    const together = { recorded: hours(5) };
    expect(stands(claim(), open({ ...together, position: 8 }))).toBe('open');
    expect(stands(claim(), open({ ...together, position: 10 }))).toBeNull();
    expect(stands(claim(), open({ ...together, position: 8, occurred: hours(2) }))).toBeNull();
  });
  it('never stands against the entry that it is, nor against a change of it', () => {
    expect(stands(claim(), open({ event: id('claim') }))).toBeNull();
    expect(stands(claim({ verb: 'correction', entry: id('open') }), open())).toBeNull();
    // A change asks for a look by its own entry: that does not stand against it either.
    const changed = claim({ verb: 'correction', entry: id('other') });
    expect(stands(changed, open({ event: id('claim') }))).toBeNull();
  });
  it.each(['correction', 'retraction', 'confirmation'] as const)(
    'stands against a %s also when it became known later, if it occurred before that was said',
    (verb) => {
      const changed = claim({ verb, entry: id('other'), occurred: hours(4) });
      expect(stands(changed, open({ recorded: hours(6) }))).toBe('open');
      expect(stands(changed, open({ occurred: hours(4), recorded: hours(6) }))).toBe('open');
      expect(stands(changed, open({ occurred: hours(4.1), recorded: hours(6) }))).toBeNull();
      expect(stands(changed, open({ occurred: hours(1.9), recorded: hours(6) }))).toBeNull();
    },
  );
  it('is told as the first of several', () => {
    const list = [
      open({ event: id('x'), occurred: hours(1) }),
      open({ event: id('y') }),
      open({ event: id('z') }),
    ];
    expect(stands(claim(), ...list)).toBe('y');
  });
});

describe('the stay as if entries were by someone who may only make it safer', () => {
  it('has these and no others said so, with the same person’s name', () => {
    const record: StayRecord = stayOf(saw('a', 1, 1), saw('b', 2, 2));
    const safer = onlySafer(record, new Set([id('b')]));
    expect(safer).toMatchObject({ stay: record.stay, version: record.version });
    expect(safer.events.map((e) => [e.id, e.author])).toEqual([
      ['e00001', { staff: 'staff-nurse', role: 'nurse' }],
      ['a', { staff: 'staff-nurse', role: 'nurse' }],
      ['b', { staff: 'staff-nurse', role: 'records' }],
    ]);
    expect(safer.events[2]).toEqual({ ...record.events[2], author: safer.events[2]!.author });
  });
});
