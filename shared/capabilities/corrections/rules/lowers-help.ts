/**
 * Whether taking an entry out, or putting another in its place, may leave less help than before.
 * Answered from the entry alone and on the safe side: "may". Source: design, rule 2.
 */
import { isQualified, type Author } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import type { weightRecorded } from '../../stays/events.ts';
import { wentWrong } from '../../sessions/rules/what-went-wrong.ts';

type Assessment = PayloadOf<typeof assessmentRecorded>;
type SessionPayload = PayloadOf<typeof sessionRecorded>;
type WeightPayload = PayloadOf<typeof weightRecorded>;
interface Entry {
  readonly type: string;
  readonly data: unknown;
}

/** Entries that never bear on how to move the person. */
const NEUTRAL: ReadonlySet<string> = new Set([
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
]);
/**
 * Entries that only ever allow more: without them the plan asks for at least as much help. "On own"
 * is not one of them, for a wider one may stand behind it; nor is a removed attachment, which asks
 * for a look; nor "seen walking", which says with what support.
 */
const PERMISSIONS: ReadonlySet<string> = new Set(['plan-confirmed', 'hold-ended']);
/** Entries that only ever ask for more; an arrival asks for a look. */
const ONLY_RAISES: ReadonlySet<string> = new Set([
  'trigger-recorded',
  'hold-placed',
  'on-own-removed',
  'attachment-added',
  'stay-begun',
]);

export function takingOutMayLowerHelp(entry: Entry): boolean {
  if (NEUTRAL.has(entry.type) || PERMISSIONS.has(entry.type)) return false;
  if (entry.type === 'session-recorded') {
    const { session } = entry.data as SessionPayload;
    return asksForMore(session) || SCORES.some((score) => session[score] !== undefined);
  }
  return true;
}

/** For bringing a withdrawn entry back, or counting one as by somebody qualified. */
export function puttingInMayLowerHelp(entry: Entry): boolean {
  if (NEUTRAL.has(entry.type)) return false;
  if (ONLY_RAISES.has(entry.type)) return false;
  if (entry.type === 'session-recorded') return frees((entry.data as SessionPayload).session);
  return true;
}

/** A reading may be beyond a limit, and it may stand in place of an earlier one that was. */
const hasReadings = ({ readings }: SessionPayload['session']): boolean => (readings?.length ?? 0) > 0;

/** What the plan may ask for because of a session, but for its numbers out of ten. */
const asksForMore = (session: SessionPayload['session']): boolean =>
  wentWrong(session) !== null || session.firstTimeUp || hasReadings(session);

/** Numbers out of ten that may be at a limit of the ward, whatever that is. */
const SCORES = ['effort', 'painBefore', 'painAfter'] as const;
/** One is less than before, or not there any more, or no longer of that session or that time. */
const scoresLess = (before: SessionPayload['session'], after: SessionPayload['session']): boolean => {
  const had = SCORES.filter((score) => before[score] !== undefined);
  if (had.length === 0) return false;
  const elsewhere =
    before.startedAt !== after.startedAt ||
    before.endedAt !== after.endedAt ||
    (before.outcome === 'not-done') !== (after.outcome === 'not-done');
  return elsewhere || had.some((score) => (after[score] ?? -1) < before[score]!);
};

/** "May we start" takes each for a reading: it may stand in place of an earlier, worse one. */
const PAINS = ['painBefore', 'painAfter'] as const;

/**
 * A first time up that went well, or a first walk here, takes back what the plan asks for because of
 * it; good readings and pains take the place of worse ones.
 */
const frees = (session: SessionPayload['session']): boolean =>
  session.firstTimeUp ||
  (session.outcome !== 'not-done' && session.activities.includes('walk')) ||
  hasReadings(session) ||
  PAINS.some((pain) => session[pain] !== undefined);

/**
 * `author` of the replacement, where it is known to count. Said again by somebody qualified, what an
 * unqualified person said may count for the first time, even word for word.
 */
export function replacingMayLowerHelp(
  old: Entry & { readonly occurred: number; readonly author?: Author },
  next: Entry & { readonly occurred: number; readonly author?: Author },
): boolean {
  if (NEUTRAL.has(old.type)) return false;
  const qualified = next.author !== undefined && isQualified(next.author);
  const countsNow = qualified && old.author !== undefined && !isQualified(old.author);
  if (old.type === 'session-recorded') {
    const before = (old.data as SessionPayload).session;
    const after = (next.data as SessionPayload).session;
    if (asksForMore(before) || scoresLess(before, after)) return true;
    if (PAINS.some((pain) => before[pain] === undefined && after[pain] !== undefined)) return true;
    const hadScores = SCORES.some((score) => before[score] !== undefined);
    if (hadScores && (old.occurred !== next.occurred || countsNow)) return true;
    const moved = old.occurred !== next.occurred && qualified;
    return frees(after) && (!frees(before) || moved || countsNow);
  }
  if (countsNow) return true;
  if (old.occurred !== next.occurred) return true;
  if (old.type === 'weight-recorded') {
    const before = (old.data as WeightPayload).weight;
    const after = (next.data as WeightPayload).weight;
    return after.kg < before.kg || before.how !== after.how;
  }
  if (old.type === 'assessment-recorded') return findsMore(old.data as Assessment, next.data as Assessment);
  return true;
}

/** True unless the new assessment is the old one with some stages found not met and nothing else changed. */
function findsMore(before: Assessment, after: Assessment): boolean {
  const rest = ({ stages: _stages, note: _note, ...others }: Assessment) => JSON.stringify(others);
  if (rest(before) !== rest(after) || before.stages.length !== after.stages.length) return true;
  return after.stages.some((stage, i) => {
    const was = before.stages[i]!;
    if (JSON.stringify(was) === JSON.stringify(stage)) return false;
    return stage.stage !== was.stage || stage.outcome !== 'not-met';
  });
}
