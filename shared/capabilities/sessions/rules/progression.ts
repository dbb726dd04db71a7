/**
 * A step up or back of the day's goal, proposed from its sessions: never in force by itself, a
 * qualified person accepts it. Source: design, progression row (common practice, no source).
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { ProposalView } from '../../board/activity-view.ts';
import type { Because } from '../../board/because.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { isCheck } from '../../orders/rules/triggers.ts';
import type { Goal, Session } from '../values.ts';
import { reaches } from './activities.ts';
import type { SessionFact } from './activity.ts';
import { stepBack, stepUp, type Step } from './goal-steps.ts';
import type { GoalInput, GoalToday } from './goals.ts';
import { isOfThePerson } from './what-went-wrong.ts';

export interface ProgressionInput extends GoalInput {
  /** Effective facts up to the instant asked about, in order. */
  readonly facts: readonly Fact[];
  readonly sessions: readonly SessionFact[];
  readonly today: GoalToday;
  readonly trust: TrustView['state'];
  /** Sessions beyond a stop limit, by their entry, with the words. */
  readonly beyondStop: ReadonlyMap<EventId, string>;
}

export function proposalOf(input: ProgressionInput): ProposalView | null {
  const { today, rules, trust } = input;
  const goal = today.whole;
  if (goal === null) return null;
  const told = evidence(input, goal);
  const back = tooMuch(told, rules.activity.stepBackMisses.value, input.beyondStop);
  if (back) {
    const step = stepBack(goal, told.event ? 'event' : 'misses', input);
    return step && proposal('back', step, back.sessions, back.words, 'Step back and review');
  }
  const enough = rules.activity.stepUpSessions.value;
  // Nobody goes up while the goal that was set may not be asked, or while a check is waiting.
  if (told.easy.length < enough || today.capped || trust !== 'current') return null;
  const step = stepUp(goal, input);
  if (!step) return null;
  const words =
    `${enough} sessions at goal in a row, effort ${rules.activity.stepUpEffort.value} of 10 or less, ` +
    'nothing went wrong';
  return proposal('up', step, told.easy.slice(-enough), words, 'Next');
}

interface Evidence {
  /** At goal, easy and nothing wrong, in a row, up to the last session. */
  readonly easy: readonly SessionFact[];
  /** The person's own misses in a row, up to the last offer. */
  readonly misses: readonly SessionFact[];
  /** Something went wrong or a stop limit was passed, and no staged check has looked at the person since. */
  readonly event: SessionFact | null;
}

/** What the sessions since the goal was set say, by when they began. */
function evidence(input: ProgressionInput, goal: Goal): Evidence {
  const { facts, sessions, rules, beyondStop } = input;
  const since = goalSince(input);
  const checked = facts.findLast(isCheck)?.occurred ?? -Infinity;
  let easy: SessionFact[] = [];
  let misses: SessionFact[] = [];
  let event: SessionFact | null = null;
  const counted = sessions.filter((s) => s.from > since).toSorted((a, b) => a.from - b.from);
  for (const one of counted) {
    const said = judged(one.session, goal, rules.activity.stepUpEffort.value);
    switch (beyondStop.has(one.fact.id) ? 'event' : said) {
      case 'event':
        if (checked <= one.to) event = one;
        easy = [];
        misses = [];
        break;
      case 'miss':
        misses = [...misses, one];
        easy = [];
        break;
      case 'easy':
        easy = [...easy, one];
        misses = [];
        break;
      case 'not-easy':
        easy = [];
        misses = [];
        break;
      case 'not-said':
        misses = [];
        break;
      case 'aside':
        break;
    }
  }
  return { easy, misses, event };
}

/** The goal counts from when it was set; one that the rules propose, from the check it stands on. */
function goalSince({ today, set, facts, tierFact }: ProgressionInput): EpochMs {
  const from = set?.occurred ?? -Infinity;
  if (!today.proposed) return from;
  return Math.max(from, facts.find((f) => f.id === tierFact)?.occurred ?? -Infinity);
}

/**
 * What one session says of the goal. `not-said`: at the goal's activity, but an amount or the effort
 * was not written down, so it is neither easy nor hard. `aside`: it says nothing of this goal, or it
 * did not happen for a reason that is not the person's.
 */
function judged(
  session: Session,
  goal: Goal,
  effortMost: number,
): 'event' | 'miss' | 'easy' | 'not-easy' | 'not-said' | 'aside' {
  const { outcome, events } = session;
  if (outcome === 'not-done') return session.notDone?.group === 'said-no' ? 'miss' : 'aside';
  if (outcome === 'stopped' || events.some((e) => e !== 'equipment-fault')) return 'event';
  // What broke down was the equipment: no evidence about the person either way.
  if (events.length > 0) return 'aside';
  if (outcome === 'part') return 'miss';
  if (!reaches(session, goal.activity)) return 'aside';
  const amounts = [
    itsShare(session.metres, goal.metres, goal.timesUp),
    itsShare(session.minutesOutOfBed, goal.minutesOutOfBed, goal.timesUp),
  ];
  // A short way to the toilet is no failed walk.
  if (amounts.includes(false)) return session.occasion === 'planned' ? 'not-easy' : 'not-said';
  if (session.effort !== undefined && session.effort > effortMost) return 'not-easy';
  return session.effort === undefined || amounts.includes(null) ? 'not-said' : 'easy';
}

/** Whether a session has its share of the day's amount; null when nobody wrote it down. */
function itsShare(amount: number | undefined, asked: number | undefined, times: number): boolean | null {
  if (asked === undefined) return true;
  return amount === undefined ? null : amount * Math.max(1, times) >= asked;
}

function tooMuch(
  { event, misses }: Evidence,
  enoughMisses: number,
  beyondStop: ProgressionInput['beyondStop'],
): { sessions: readonly SessionFact[]; words: string } | null {
  if (event) {
    const { outcome, events } = event.session;
    const named = events.map((e) => e.replaceAll('-', ' ')).join(', ');
    const passed = beyondStop.get(event.fact.id);
    // A device that failed says nothing of the person: what passed the limit does.
    if (passed !== undefined && !events.some(isOfThePerson)) return { sessions: [event], words: passed };
    const what = named || 'no reason written down';
    return {
      sessions: [event],
      words: `${outcome === 'stopped' ? 'A session was stopped' : 'Something went wrong in a session'}: ${what}`,
    };
  }
  if (misses.length < enoughMisses) return null;
  return {
    sessions: misses.slice(-enoughMisses),
    words: `${enoughMisses} times in a row the person said no or did only part`,
  };
}

function proposal(
  step: ProposalView['step'],
  { goal, words, facts }: Step,
  sessions: readonly SessionFact[],
  why: string,
  leads: string,
): ProposalView {
  const carried: EventId[] = sessions.map((s) => s.fact.id);
  const because: Because[] = [
    { rule: `progression/${step}`, facts: carried, words: why },
    { rule: 'progression/step', facts: facts.length > 0 ? [...facts] : carried, words: `${leads}: ${words}` },
    {
      rule: 'progression/to-accept',
      facts: carried,
      words: 'A proposal only: a nurse or therapist accepts it or leaves it',
    },
  ];
  return { step, goal, sessions: carried, because };
}
