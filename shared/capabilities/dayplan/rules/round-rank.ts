/**
 * How much each reason counts on the round. Nothing is hidden: every reason carries its points, and
 * every weight is the ward's own (rules document, group "round"). Ours, practice.
 */
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Because } from '../../board/because.ts';
import type { StayView } from '../../board/view.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';

export interface Reason extends Because {
  /** What it adds to the rank; 0 for what is not known, below 0 for what makes it wait. */
  readonly points: number;
  /** When the fact it rests on was; null where it is not one fact. */
  readonly at: EpochMs | null;
  /** For a reason to wait: until when. */
  readonly until: EpochMs | null;
}

export interface RankInput {
  readonly t: EpochMs;
  readonly night: { readonly is: boolean; readonly until: EpochMs };
  readonly rules: RulesDocument;
  readonly say: (at: EpochMs) => string;
}

/** The strongest first; of equal points in the order in which they are asked here. */
export function reasonsOf(stay: StayView, input: RankInput): Reason[] {
  return [
    awake(stay, input),
    backToBed(stay, input),
    shortfall(stay, input),
    ...signs(stay, input),
    leaving(stay, input),
    missed(stay, input),
    ate(stay, input),
    rested(stay, input),
  ]
    .filter((r): r is Reason => r !== null)
    .toSorted((a, b) => b.points - a.points);
}

const tenth = (points: number): number => Math.round(points * 10) / 10;
const reason = (
  rule: string,
  words: string,
  points: number,
  facts: Because['facts'] = [],
  { at = null, until = null }: { at?: EpochMs | null; until?: EpochMs | null } = {},
): Reason => ({ rule: `round/${rule}`, facts: [...facts], words, points: tenth(points), at, until });

/** Waking hours since last up; null where nothing says it. */
export function awakeHours({ debt }: StayView, t: EpochMs): number | null {
  return debt && Math.max(0, (debt.pausedAt ?? t) - debt.since - debt.sleptMs) / HOUR;
}

function awake(stay: StayView, { t, rules }: RankInput): Reason {
  const hours = awakeHours(stay, t);
  const { lastUp } = stay;
  if (hours === null) return reason('awake', 'How long not up is not known', 0);
  const { awakePoints, awakeHours: full } = rules.round;
  const points = awakePoints.value * (hours / full.value) ** 2;
  const whole = Math.floor(hours);
  return lastUp
    ? reason('awake', `Not up for ${whole} h awake`, points, [lastUp.event], { at: lastUp.at })
    : reason('awake', `No time up recorded since arrival, ${whole} h awake`, points, [], { at: stay.began });
}

function backToBed({ chair }: StayView, { t, rules, say }: RankInput): Reason | null {
  if (!chair || chair.backBy === null || t < chair.backBy) return null;
  const words = `In the chair since ${say(chair.since)}, was to be back in bed by ${say(chair.backBy)}`;
  return reason('back-to-bed', words, rules.round.backToBedPoints.value, [chair.event], { at: chair.since });
}

/** How many times up today's goal still asks for; a day with nothing recorded may have met any of them. */
export function missing({ today: { goal, recorded, timesUp } }: StayView): number {
  return goal ? Math.max(0, goal.timesUp - (recorded ? timesUp : 0)) : 0;
}

function shortfall(stay: StayView, { t, night, rules, say }: RankInput): Reason | null {
  const { goal, recorded, timesUp } = stay.today;
  if (!goal) return reason('goal', 'No goal for today', 0);
  const left = missing(stay);
  if (left === 0) return null;
  const hoursLeft = Math.max(1, ((night.is ? t : night.until) - t) / HOUR);
  const points = rules.round.shortfallPoints.value * Math.min(2, left / hoursLeft);
  const until = `night ${say(night.until)}`;
  return recorded
    ? reason('goal', `${timesUp} of ${goal.timesUp} today, ${until}`, points)
    : reason('goal', `Nothing recorded today, ${goal.timesUp} asked for, ${until}`, points);
}

/** Losing ground counts; being ready for more is told and moves nobody up. Refusals are a gate. */
const signs = ({ signs: told }: StayView, { rules }: RankInput): Reason[] =>
  told
    .filter(({ kind }) => kind !== 'refusals')
    .map(({ kind, words, because }) =>
      reason(
        kind,
        words,
        kind === 'ready' ? 0 : rules.round.losingPoints.value,
        because.flatMap(({ facts }) => facts),
      ),
    );

function leaving({ leaving: going }: StayView, { t, rules, say }: RankInput): Reason | null {
  if (!going || going.at > t + rules.round.leavingHours.value * HOUR) return null;
  const words = `Leaving ${say(going.at)}`;
  return reason('leaving', words, rules.round.leavingPoints.value, [going.event], { at: going.at });
}

/** The floor under everybody: a day without a time up counts, most of all behind a closed door. */
function missed({ lately, isolation }: StayView, { rules }: RankInput): Reason | null {
  const day = lately?.yesterday;
  if (!day || (day.recorded && day.timesUp > 0)) return null;
  const { missedPoints, isolationFloorPoints } = rules.round;
  const points = missedPoints.value + (isolation ? isolationFloorPoints.value : 0);
  const words = day.recorded ? 'Not up yesterday' : 'No time up recorded yesterday';
  return reason('missed', isolation ? `${words}, in isolation` : words, points);
}

function ate({ lately }: StayView, { t, rules, say }: RankInput): Reason | null {
  const meal = lately?.meal;
  const until = meal ? meal.at + rules.round.mealMinutes.value * MINUTE : 0;
  if (!meal || t >= until) return null;
  const words = `Ate ${say(meal.at)}`;
  return reason('ate', words, -rules.round.mealPoints.value, [meal.event], { at: meal.at, until });
}

function rested({ lastUp, chair }: StayView, { t, rules, say }: RankInput): Reason | null {
  const until = lastUp ? lastUp.at + rules.round.restFullMinutes.value * MINUTE : 0;
  if (!lastUp || chair || t >= until) return null;
  const words = `Last up ${say(lastUp.at)}, not long ago`;
  return reason('rest', words, -rules.round.restPoints.value, [lastUp.event], { at: lastUp.at, until });
}
