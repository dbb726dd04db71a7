/**
 * The day's goal: what a person set, else the rules' proposal. It starts from the usual way of
 * moving; the tier, holds and orders only cap it, so it never asks for an activity whose stage is
 * not cleared. Source: design, goals row (doses in the users' research; the rest ours).
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { ifAny, type Because } from '../../board/because.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { UsualWay } from '../../stays/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { goalSet } from '../events.ts';
import type { Activity, Goal } from '../values.ts';
import { LADDER } from './activities.ts';
import { isWithin, mostByUsualWay, reasonsOf, whatStops, type GoalLimits, type Stop } from './goal-limits.ts';
import { goalForShare } from './waking.ts';

export interface GoalInput extends GoalLimits {
  readonly usualWay: { readonly value: UsualWay; readonly fact: EventId } | null;
  /** The entry that last told of the person's wish. */
  readonly wish: EventId | null;
  /** Longest walk done without anything going wrong, metres. */
  readonly longestWalk: { readonly metres: number; readonly fact: EventId } | null;
  /** The last goal that a qualified person set. */
  readonly set: Fact<PayloadOf<typeof goalSet>> | null;
  /** How much of this ward day's waking hours the person is here, 0 to 1. */
  readonly share: number;
  readonly arrival: EventId | null;
  /** The entry by which the person leaves on this ward day, where one says so. */
  readonly leaving?: EventId | null;
  /** Whether the person arrived before this ward day began. */
  readonly hereBefore?: boolean;
  readonly rules: RulesDocument;
}
export interface GoalToday {
  /** What is asked today. */
  readonly goal: Goal | null;
  /** The same for a whole ward day: what steps go up or back from. */
  readonly whole: Goal | null;
  readonly proposed: boolean;
  /** A goal was set that may not be asked now; a lesser one stands in. */
  readonly capped: boolean;
  readonly because: Because[];
}
export const NO_GOAL: GoalToday = { goal: null, whole: null, proposed: false, capped: false, because: [] };

export function goalToday(input: GoalInput): GoalToday {
  const { cleared, arrival, share, leaving = null, hereBefore = false } = input;
  if (cleared === null) {
    return {
      ...NO_GOAL,
      because: [say('goal/not-known', ifAny(arrival), 'No goal before the first check')],
    };
  }
  const whole = wholeDay(input);
  if (whole.whole === null || share >= 1) return whole;
  const goal = goalForShare(whole.whole, share);
  const words = goal
    ? `Here for part of this ward day: ${goal.timesUp} of ${whole.whole.timesUp} times asked`
    : hereBefore
      ? 'Leaves in the night: nothing asked on this ward day'
      : 'Arrived in the night: the goal begins with the next ward day';
  const facts = [hereBefore ? null : arrival, leaving].filter((f) => f !== null);
  return {
    ...whole,
    goal,
    because: [...whole.because, say('goal/part-of-day', facts, words)],
  };
}

function wholeDay(input: GoalInput): GoalToday {
  const { set } = input;
  if (!set) return propose(input, null);
  const { goal } = set.data;
  const stop = whatStops(goal.activity, input);
  if (!stop) {
    const by = say('goal/set', [set.id], 'Set by a nurse or therapist');
    return { goal, whole: goal, proposed: false, capped: false, because: [by] };
  }
  const [reason] = reasonsOf([stop]);
  const words = `The goal that was set asks for ${plain(goal.activity)}: ${reason!.words}`;
  const lesser = propose(input, goal);
  return {
    ...lesser,
    capped: true,
    because: [say('goal/capped', [set.id, ...reason!.facts], words), ...lesser.because],
  };
}

/** From the most demanding down; the first that is allowed is taken. Never more than was set. */
function propose(input: GoalInput, set: Goal | null): GoalToday {
  const { usualWay, wish, arrival } = input;
  const usual = usualWay && mostByUsualWay(usualWay.value);
  const stops: Stop[] = [];
  for (const activity of LADDER.toReversed()) {
    if (!isWithin(activity, usual) || !isWithin(activity, set?.activity ?? null)) continue;
    const stop = whatStops(activity, input);
    if (stop) {
      stops.push(stop);
      continue;
    }
    const timesUp = Math.min(input.rules.activity.timesUp.value, set?.timesUp ?? Infinity);
    const { goal, because } = goalFor(activity, timesUp, input);
    if (usual && usualWay) {
      const words = `Usual way of moving: at most ${plain(usual)} asked`;
      because.push(say('goal/usual-way', [usualWay.fact], words));
    } else if (!usualWay) {
      const words = 'Usual way of moving not recorded: ask for it, the goal starts from there';
      because.push(say('goal/usual-way-not-known', ifAny(arrival), words));
    }
    if (wish) because.push(say('goal/wish', [wish], 'A wish is recorded: set the goal from it'));
    because.push(...reasonsOf(stops));
    return { goal, whole: goal, proposed: true, capped: false, because };
  }
  return { ...NO_GOAL, because: reasonsOf(stops) };
}

function goalFor(activity: Activity, timesUp: number, input: GoalInput): { goal: Goal; because: Because[] } {
  const { longestWalk, tierFact, rules } = input;
  const facts = ifAny(tierFact);
  const because = [
    say('goal/proposed', facts, `Proposed from what is cleared: ${dose(activity, timesUp, input)}`),
  ];
  if (activity === 'walk' && longestWalk) {
    const ceiling = rules.activity.walkCeilingMetres;
    because.push(
      say(
        'goal/distance',
        [longestWalk.fact],
        `${timesUp} times the longest walk done safely (${longestWalk.metres} m), at most ${ceiling.value} m (${ceiling.source})`,
      ),
    );
    return {
      goal: { activity, timesUp, metres: Math.min(ceiling.value, timesUp * longestWalk.metres) },
      because,
    };
  }
  if (activity !== 'walk' && activity !== 'back-raised') {
    const hours = rules.activity.chairSpellHours.value;
    because.push(
      say('goal/chair-spell', facts, `Each chair spell: back to bed after ${hours} h at the latest`),
    );
  }
  return { goal: { activity, timesUp }, because };
}

/** What is asked in words, stage by stage. Source: design, goals row. */
function dose(activity: Activity, times: number, input: GoalInput): string {
  const minutes = input.rules.activity.spellMinutes.value;
  const mayBeLifted = whatStops('lifted-to-chair', input) === null;
  switch (activity) {
    case 'walk':
      return `${times} times walk`;
    case 'chair':
      return `${times} stand-and-turn transfers to the chair, all meals out of bed`;
    case 'stand':
      return `${times} stands with the help of the plan${mayBeLifted ? ', meals out of bed' : ''}`;
    case 'edge-sit':
      return `${times} spells at the edge of the bed${mayBeLifted ? ', or in a chair by lift' : ''}`;
    default:
      if (input.cleared!.has('upright')) return `${times} upright spells of ${minutes} min`;
      return (
        `${times} spells with the back raised as high as tolerated, building up to ${minutes} min` +
        (mayBeLifted ? '; or a chair by lift if a nurse sets it' : '')
      );
  }
}

const plain = (code: string): string => code.replaceAll('-', ' ');
const say = (rule: string, facts: EventId[], words: string): Because => ({ rule, facts, words });
