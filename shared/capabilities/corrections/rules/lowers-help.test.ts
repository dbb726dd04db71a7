/** Which changes of an entry may leave less help: design, rule 2, answered on the safe side. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import type { StaffId } from '../../../kernel/ids.ts';
import { check, hours, session, type Told } from '../../board/rules/history.testkit.ts';
import { EVENT_TYPES } from '../../registry.ts';
import { puttingInMayLowerHelp, replacingMayLowerHelp, takingOutMayLowerHelp } from './lowers-help.ts';

const entry = ({ type, payload, at = 1 }: Told, role?: Role) => ({
  type,
  data: payload,
  occurred: hours(at),
  ...(role ? { author: { staff: `staff-${role}` as StaffId, role } } : {}),
});
const bare = (type: string) => ({ type, data: {}, occurred: hours(1) });
const replaced = (old: Told, next: Told, was: Role | undefined = 'nurse', by: Role | undefined = 'nurse') =>
  replacingMayLowerHelp(entry(old, was), entry(next, by));

/** As they bear on help: kinds that an entry of a stay may have, sessions apart. */
const NEUTRAL = [
  'goal-set',
  'usual-way-recorded',
  'went-off-ward',
  'came-back',
  'stay-moved',
  'stay-ended',
  'asleep-seen',
  'walking-measures-switched',
  'walking-measured',
  'wall-showing-set',
  'isolation-set',
  'leaving-expected',
  'therapist-line-set',
  'visit-taken',
  'visit-handed-over',
  'visit-given-back',
  'second-named',
  'second-gave-back',
  'list-acted-on',
];
const ALLOWS = ['plan-confirmed', 'hold-ended'];
const RAISES = ['trigger-recorded', 'hold-placed', 'on-own-removed', 'attachment-added', 'stay-begun'];
const CHANGES = ['correction-made', 'retraction-made', 'addendum-made', 'amendment-made'];
const OTHERS = [...EVENT_TYPES.values()]
  .filter((t) => t.stream === 'stay' && !CHANGES.includes(t.name))
  .map((t) => t.name)
  .filter((name) => ![...NEUTRAL, ...ALLOWS, ...RAISES, 'session-recorded'].includes(name));

const reading = { kind: 'heart-rate', perMinute: 80, at: new Date(hours(1)).toISOString() };
const EARLIER = new Date(hours(0.5)).toISOString();
const LATER = new Date(hours(1.5)).toISOString();
const exercise = (extra: object = {}) => session(1, { activities: ['bed-exercise'], ...extra });
const notDone = { outcome: 'not-done', activities: [], notDone: { group: 'no-people' } };

describe('taking an entry out', () => {
  it.each([...NEUTRAL, ...ALLOWS])('lowers no help: %s', (type) => {
    expect(takingOutMayLowerHelp(bare(type))).toBe(false);
  });
  it.each([...RAISES, ...OTHERS])('may lower help: %s', (type) => {
    expect(takingOutMayLowerHelp(bare(type))).toBe(true);
  });
  it.each([
    ['an ordinary one', session(1), false],
    ['one without readings', session(1, { readings: [] }), false],
    ['one that went wrong', session(1, { events: ['near-fall'] }), true],
    ['one that was stopped', session(1, { outcome: 'stopped' }), true],
    ['a first time up', session(1, { firstTimeUp: true }), true],
    ['one with a reading', session(1, { readings: [reading] }), true],
    ['one in which a line was pulled', session(1, { events: ['line-pulled'] }), true],
    ['one with an equipment fault only', session(1, { events: ['equipment-fault'] }), false],
    ['one with an effort', session(1, { effort: 1 }), true],
    ['one with a pain after it', session(1, { painAfter: 0 }), true],
    ['one with a pain before it', session(1, { painBefore: 4 }), true],
    ['one with breathlessness alone', session(1, { breathless: 9 }), false],
  ] as const)('of sessions, %s: %#', (_what, told, may) => {
    expect(takingOutMayLowerHelp(entry(told))).toBe(may);
  });
});

describe('putting an entry in', () => {
  it.each([...NEUTRAL, ...RAISES])('lowers no help: %s', (type) => {
    expect(puttingInMayLowerHelp(bare(type))).toBe(false);
  });
  it.each([...ALLOWS, ...OTHERS])('may lower help: %s', (type) => {
    expect(puttingInMayLowerHelp(bare(type))).toBe(true);
  });
  it.each([
    ['a walk', session(1), true],
    ['a walk in part', session(1, { outcome: 'part' }), true],
    ['one not done', session(1, notDone), false],
    ['one not done that names a walk', session(1, { ...notDone, activities: ['walk'] }), false],
    ['exercise in bed', exercise(), false],
    ['exercise in bed with no readings', exercise({ readings: [] }), false],
    ['exercise in bed, first time up', exercise({ firstTimeUp: true }), true],
    ['exercise in bed with a reading', exercise({ readings: [reading] }), true],
    ['exercise in bed with a pain before it', exercise({ painBefore: 0 }), true],
    ['exercise in bed with a pain after it', exercise({ painAfter: 2 }), true],
    ['one not done with a pain before it', session(1, { ...notDone, painBefore: 1 }), true],
    ['exercise in bed with an effort', exercise({ effort: 1 }), false],
  ] as const)('of sessions, %s: %#', (_what, told, may) => {
    expect(puttingInMayLowerHelp(entry(told))).toBe(may);
  });
});

describe('putting another in an entry’s place', () => {
  it.each(NEUTRAL)('lowers no help: %s', (type) => {
    expect(replacingMayLowerHelp(bare(type), { ...bare(type), occurred: hours(2) })).toBe(false);
  });
  it.each([
    ...ALLOWS,
    ...RAISES,
    ...OTHERS.filter((t) => t !== 'weight-recorded' && t !== 'assessment-recorded'),
  ])('may lower help, whatever changed: %s', (type) => {
    expect(replacingMayLowerHelp(bare(type), bare(type))).toBe(true);
  });

  const weight = (kg: number, how = 'measured', at = 1): Told => ({
    type: 'weight-recorded',
    at,
    payload: { weight: { kg, how } },
  });
  it.each([
    ['lighter', weight(80), weight(79.9), true],
    ['heavier', weight(80), weight(80.1), false],
    ['the same', weight(80), weight(80), false],
    ['the same, read in another way', weight(80), weight(80, 'estimated'), true],
    ['the same, read at another time', weight(80), weight(80, 'measured', 2), true],
  ] as const)('of weights, %s: %#', (_what, old, next, may) => {
    expect(replaced(old, next)).toBe(may);
  });
  it('may lower help when it counts for the first time, said by somebody qualified', () => {
    const [was, is] = [weight(80), weight(90)];
    expect(replaced(was, is, 'aide', 'nurse')).toBe(true);
    expect(replaced(was, is, 'aide', 'aide')).toBe(false);
    expect(replaced(was, is, 'nurse', 'aide')).toBe(false);
    expect(replacingMayLowerHelp(entry(was), entry(is, 'nurse'))).toBe(false);
    expect(replacingMayLowerHelp(entry(was, 'aide'), entry(is))).toBe(false);
  });

  const stages = (told: Told) => (told.payload as { stages: readonly object[] }).stages;
  const withStages = (told: Told, list: readonly object[]): Told => ({
    ...told,
    payload: { ...(told.payload as object), stages: list },
  });
  const stood = check('stand', 1);
  it.each([
    ['word for word the same', stood, false],
    ['with a stage not met', check('stand', 1, { stand: { outcome: 'not-met' } }), false],
    [
      'with two stages not met',
      check('stand', 1, { edge: { outcome: 'not-met' }, stand: { outcome: 'not-met' } }),
      false,
    ],
    ['with another note', check('stand', 1, {}, { note: { ref: 'text-1' } }), false],
    ['with one stage more', check('turn', 1), true],
    ['with one stage fewer', check('edge', 1), true],
    ['with a stage held safe instead of free', check('stand', 1, { stand: { how: 'secured' } }), true],
    ['with a symptom', check('stand', 1, { stand: { symptom: true } }), true],
    ['with another depth', check('stand', 1, {}, { depth: 'full-with-pressure' }), true],
    ['at another time', { ...stood, at: 2 }, true],
    [
      'with a stage not met and another changed',
      check('stand', 1, { upright: { symptom: true }, stand: { outcome: 'not-met' } }),
      true,
    ],
    [
      'with another stage in the place of one, not met',
      withStages(stood, [
        ...stages(stood).slice(0, -1),
        { ...stages(stood).at(-1), stage: 'walk', outcome: 'not-met' },
      ]),
      true,
    ],
  ] as const)('of checks, %s: %#', (_what, next, may) => {
    expect(replaced(stood, next)).toBe(may);
  });

  it.each([
    ['an ordinary one for another', exercise(), exercise({ metres: 3 }), false],
    ['a walk for one that was none', exercise(), session(1), true],
    ['exercise for a walk', session(1), exercise(), false],
    ['a walk for a walk', session(1), session(1, { metres: 20 }), false],
    ['an ordinary one for one that went wrong', session(1, { events: ['dizzy'] }), session(1), true],
    ['one that went wrong for an ordinary one', exercise(), exercise({ events: ['dizzy'] }), false],
    ['an ordinary one for a first time up', exercise({ firstTimeUp: true }), exercise(), true],
    ['one with a reading for one without', exercise(), exercise({ readings: [reading] }), true],
    ['the same effort', exercise({ effort: 9 }), exercise({ effort: 9, metres: 3 }), false],
    ['more effort', exercise({ effort: 3 }), exercise({ effort: 9 }), false],
    ['an effort where none was', exercise(), exercise({ effort: 1 }), false],
    ['less effort', exercise({ effort: 9 }), exercise({ effort: 8 }), true],
    ['no effort', exercise({ effort: 9 }), exercise(), true],
    ['less pain after', exercise({ painAfter: 7, effort: 1 }), exercise({ painAfter: 6, effort: 1 }), true],
    ['a pain where none was', exercise(), exercise({ painBefore: 0 }), true],
    ['a pain after a walk where none was', session(1), session(1, { painAfter: 0 }), true],
    ['more pain', exercise({ painAfter: 6 }), exercise({ painAfter: 7 }), false],
    ['less pain before', exercise({ painBefore: 7 }), exercise({ painBefore: 6 }), true],
    [
      'the same effort of one that was not done',
      exercise({ effort: 9 }),
      exercise({ ...notDone, effort: 9 }),
      true,
    ],
    [
      'the same pain, begun earlier',
      exercise({ painAfter: 7 }),
      exercise({ painAfter: 7, startedAt: EARLIER }),
      true,
    ],
    [
      'the same pain, ended later',
      exercise({ painAfter: 7 }),
      exercise({ painAfter: 7, endedAt: LATER }),
      true,
    ],
    ['no effort where the least was told', exercise({ effort: 1 }), exercise(), true],
    ['no pain told where none was felt', exercise({ painAfter: 0 }), exercise(), true],
    ['exercise without a number, begun earlier', exercise(), exercise({ startedAt: EARLIER }), false],
    ['exercise without a number, ended later', exercise(), exercise({ endedAt: LATER }), false],
    ['exercise without a number that was not done', exercise(), exercise(notDone), false],
    [
      'the same effort of one that was not done either time',
      exercise({ ...notDone, effort: 9 }),
      exercise({ ...notDone, effort: 9 }),
      false,
    ],
    [
      'the same effort of one that was done after all',
      exercise({ ...notDone, effort: 9 }),
      exercise({ effort: 9 }),
      true,
    ],
    ['the same effort at another time', exercise({ effort: 9 }), { ...exercise({ effort: 9 }), at: 2 }, true],
    ['a walk at another time', session(1), { ...session(1), at: 2 }, true],
    ['exercise at another time', exercise(), { ...exercise(), at: 2 }, false],
  ] as const)('of sessions, %s: %#', (_what, old, next, may) => {
    expect(replaced(old, next)).toBe(may);
  });
  it('of sessions, a walk moved by an aide lowers nothing, nor does an aide’s walk told again by an aide', () => {
    expect(replaced(session(1), { ...session(1), at: 2 }, 'nurse', 'aide')).toBe(false);
    expect(replaced(session(1), session(1), 'aide', 'aide')).toBe(false);
    expect(replaced(session(1), session(1), 'aide', 'nurse')).toBe(true);
    expect(replaced(exercise(), exercise(), 'aide', 'nurse')).toBe(false);
    expect(replaced(exercise({ painAfter: 7 }), exercise({ painAfter: 7 }), 'aide', 'nurse')).toBe(true);
  });
});
