/** Random streams of stays for property tests: any author, any time, late and wrong entries too. */
import * as fc from 'fast-check';
import type { Role } from '../../../kernel/author.ts';
import {
  begun,
  check,
  confirm,
  confirmation,
  correct,
  cosignature,
  retract,
  unconfirmed,
  type Told,
} from './history.testkit.ts';
import { checks, when } from './random-checks.testkit.ts';
import { anyEntry } from './random-entries.testkit.ts';

const anyRole = fc.constantFrom<Role>('aide', 'nurse', 'therapist', 'charge-nurse', 'records');
/** Who says it: now and then somebody whose name nobody had checked, and agency staff. */
interface Says {
  readonly role: Role;
  readonly mark: 'unconfirmed' | 'cosign' | null;
}
const anyone: fc.Arbitrary<Says> = fc.record({
  role: anyRole,
  mark: fc.constantFrom(null, null, null, 'unconfirmed', 'cosign'),
});
function saidBy(one: Told, { role, mark }: Says): Told {
  if (mark === 'unconfirmed') return unconfirmed({ ...one, role });
  return mark === null ? { ...one, role } : { ...one, role, source: { kind: 'person', cosign: 'agency' } };
}
/** What may be said about an earlier entry, chosen by `back`: how many entries ago. */
const spoken = fc.record({
  verb: fc.constantFrom(
    'correct',
    'retract',
    'confirm',
    'end-hold',
    'answer',
    'add',
    'stand-by',
    'stand-by',
    'sign',
  ),
  back: fc.integer({ min: 1, max: 12 }),
  at: when,
  by: checks,
  moved: fc.option(when, { nil: undefined }),
});

const step = fc.tuple(
  fc.oneof({ weight: 4, arbitrary: anyEntry.map((of) => ({ of })) }, { weight: 1, arbitrary: spoken }),
  anyone,
);

/** The same, each recorded a minute after it occurred or, told after a later one, after that: as a log records. */
export function asRecorded(told: readonly Told[]): readonly Told[] {
  let recorded = 0;
  return told.map((one) => {
    recorded = Math.max(recorded + 1 / 3600, (one.at ?? 0) + 1 / 60);
    return { ...one, recorded };
  });
}

/** One more entry, of itself or about one of those told; by anyone, of any time. */
export const oneMore = (told: readonly Told[]): fc.Arbitrary<Told> =>
  step.map(([one, says]) => ({ ...stepOf(told, one, says), id: 'added' }));

type Step = typeof step extends fc.Arbitrary<readonly [infer S, Says]> ? S : never;
function stepOf(told: readonly Told[], one: Step, says: Says): Told {
  if ('of' in one) return saidBy(one.of, says);
  if (one.verb === 'stand-by') return standBy(told, one, says);
  return saidBy(spokenOf(one.verb, told[Math.max(0, told.length - one.back)]!, one), says);
}

/** Most confirmations are of an entry that waits for one, by the person it names; some are of anything, by anyone. */
function standBy(told: readonly Told[], { at, back }: { at: number; back: number }, says: Says): Told {
  const waiting = told.filter((one) => one.source?.unconfirmed);
  const target = waiting[waiting.length - 1 - (back % Math.max(1, waiting.length))];
  if (!target || back % 6 === 0) {
    return saidBy(confirmation(at, told[Math.max(0, told.length - back)]!.id!), says);
  }
  const role = target.staff!.replace('staff-', '') as Role;
  return { ...confirmation(at, target.id!, role), role };
}

/**
 * A stay in which little happened: weighed and seen walking free with nobody helping, then a few entries
 * by anyone. Here what one entry asks for is not hidden behind what others ask for already.
 */
export const calm: fc.Arbitrary<readonly Told[]> = fc
  .array(fc.tuple(anyEntry, anyone), { minLength: 1, maxLength: 4 })
  .map((entries) => [
    { ...begun(), id: 'e00000' },
    { type: 'weight-recorded', at: 0, id: 'e00001', payload: { weight: { kg: 70, how: 'measured' } } },
    { ...walksAlone, id: 'e00002' },
    ...entries.map(([one, says], n): Told => ({ ...saidBy(one, says), id: `f${n}` })),
  ]);
const free = check('walk', 0.25);
const stagesOf = (free.payload as { stages: object[] }).stages;
const walksAlone: Told = {
  ...free,
  payload: { ...(free.payload as object), stages: stagesOf.map((s) => ({ ...s, people: 0 })) },
};

/** A random stay's stream, as events in the order told: any author, any time, also late and wrong. */
export const histories: fc.Arbitrary<readonly Told[]> = fc
  .array(step, { minLength: 1, maxLength: 40 })
  .map((steps) => {
    const out: Told[] = [{ ...begun(), id: 'e00000' }];
    for (const [one, says] of steps) {
      out.push({ ...stepOf(out, one, says), id: `e${String(out.length).padStart(5, '0')}` });
    }
    return out;
  });

function spokenOf(
  verb: string,
  target: Told,
  { at, by, moved }: { at: number; by: Told; moved: number | undefined },
): Told {
  const id = target.id!;
  switch (verb) {
    case 'correct': {
      const again = target.type === 'assessment-recorded' ? by : target;
      if (target.type === 'correction-made') return retract(at, id);
      return correct(at, id, again, 'nurse', moved);
    }
    case 'retract':
      return retract(at, id);
    case 'confirm':
      return confirm(at, id);
    case 'end-hold':
      return { type: 'hold-ended', at, payload: { hold: 'hold-1', placedBy: id } };
    case 'answer':
      return { ...by, payload: { ...(by.payload as object), answers: [id] } };
    case 'sign':
      return cosignature(at, id);
    default:
      return {
        type: 'addendum-made',
        at,
        payload: { target: id, text: { ref: 'text-1' }, reason: 'unclear' },
      };
  }
}
