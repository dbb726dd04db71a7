/**
 * When the next check is due, and why. Due is the earliest of what the last check's validity, the
 * ward's shifts and each open trigger ask for. Source: design, validity row; limits by trigger from
 * the users' research 3a (common practice, to be signed by the ward).
 */
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Trigger } from '../../orders/rules/triggers.ts';
import type { TriggerKind } from '../../orders/values.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';
import { ifAny, type Because } from '../because.ts';
import type { DueView } from '../moving-view.ts';
import { asleepAt, dueAfterAway, timesAway, type TimeAway } from './pauses.ts';
import { say, saidAt, type Renewal, type TrustInput, type Validity } from './validity.ts';

/** After these the next check belongs to the next move, not to a clock, unless the ward gave a time. */
const AT_NEXT_MOVE: ReadonlySet<TriggerKind> = new Set<TriggerKind>([
  'return-from-surgery',
  'return-from-dialysis',
  'sedation',
  'block-on',
  'block-off',
]);

/** A time by which somebody must look. */
interface Limit {
  readonly at: EpochMs;
  readonly because: readonly Because[];
  /** Seen asleep, it waits for the next move. */
  readonly letsSleep: boolean;
}

/** `open`: the open triggers that count; `renewal` and `validity` are null before the first check. */
export function dueView(
  renewal: Renewal | null,
  validity: Validity | null,
  open: readonly Trigger[],
  input: TrustInput,
): DueView {
  const { t, rules, standing, note } = input;
  const away = timesAway(input.facts);
  const limits = [
    ...(validity ? validityLimits(validity, open, input) : [firstCheckLimit(input)]),
    ...open.flatMap((o) => triggerLimit(o, input) ?? []),
  ]
    .map((limit) => backOnWard(limit, away, input))
    .toSorted((a, b) => a.at - b.at);
  if (standing.away) {
    const words = `Off the ward since ${saidAt(input, standing.away.since)}: before the next move`;
    const left = input.facts.findLast((f) => f.type === 'went-off-ward' && f.occurred <= t);
    return { state: 'at-next-move', at: null, because: [say('due/away', ifAny(left?.id), words)] };
  }
  const grace = rules.validity.graceMinutes.value * MINUTE;
  for (const { at } of limits) {
    note(at);
    note(at + grace);
  }
  // The first check of a stay waits for nobody to wake up.
  const asleep = renewal ? asleepAt(input) : null;
  const passed = limits.filter((limit) => t >= limit.at);
  const now = passed.filter((limit) => !(asleep && limit.letsSleep));
  if (now.length > 0) {
    const { at } = now[0]!;
    return {
      state: t >= at + grace ? 'overdue' : 'due',
      at,
      because: now.flatMap((limit) => limit.because),
    };
  }
  const before = open.map((o) => beforeNextMove(o, away, input));
  if (asleep && passed.length > 0) {
    const words = `Seen asleep ${saidAt(input, asleep.occurred)}: before the next move`;
    return {
      state: 'at-next-move',
      at: null,
      because: [
        say('due/asleep', [asleep.id], words),
        ...before,
        ...passed.flatMap((limit) => limit.because),
      ],
    };
  }
  if (before.length > 0) return { state: 'at-next-move', at: null, because: before };
  const [first] = limits;
  if (validity) {
    note(validity.nextMoveFrom);
    note(validity.until);
    // Ran out while off the ward, and there is still time since the return.
    if (t >= validity.until) return { state: 'at-next-move', at: null, because: [...first!.because] };
    if (t >= validity.nextMoveFrom) {
      return { state: 'at-next-move', at: null, because: [validity.moveBecause!, ...first!.because] };
    }
  }
  return {
    state: 'not-due',
    at: first!.at,
    because: [...(validity?.moveBecause ? [validity.moveBecause] : []), ...first!.because],
  };
}

/** Within the ward's hours of arrival; the earlier where the ward gives the arrival a time of its own too. */
function firstCheckLimit({ standing, facts, rules }: TrustInput): Limit {
  const { firstCheckHours, triggers } = rules.validity;
  const arrival = triggers.arrival;
  const hours =
    typeof arrival?.value === 'number' && arrival.value < firstCheckHours.value ? arrival : firstCheckHours;
  const arrived = standing.began ?? facts[0]?.occurred ?? 0;
  const words = `First check within ${hours.value} h of arrival (${hours.source})`;
  return {
    at: arrived + Number(hours.value) * HOUR,
    because: [say('due/arrival', ifAny(arrivalOf(facts)), words)],
    letsSleep: false,
  };
}

/**
 * A check that belongs to the next move waits longer for a clock: so long after what it waits for, where
 * that came before the hours were over. Once over, no later entry moves them.
 */
function validityLimits(
  { byHours, byShift, hoursBecause, shiftBecause }: Validity,
  open: readonly Trigger[],
  input: TrustInput,
): Limit[] {
  const { unsettledHours, triggers } = input.rules.validity;
  const waits = open.findLast(
    (o) => AT_NEXT_MOVE.has(o.kind) && (triggers[o.kind]?.value ?? null) === null && o.at < byHours,
  );
  const waitsUntil = waits ? waits.at + unsettledHours.value * HOUR : -Infinity;
  const limits: Limit[] = [{ at: Math.max(byHours, waitsUntil), because: [hoursBecause], letsSleep: true }];
  if (waits && waitsUntil > byHours) {
    const words =
      `${waits.words}, ${saidAt(input, waits.at)}: before the next move, ` +
      `and within ${unsettledHours.value} h without one (${unsettledHours.source})`;
    limits[0] = { ...limits[0]!, because: [say('due/without-a-move', [waits.event], words), hoursBecause] };
  }
  if (byShift < Infinity) limits.push({ at: byShift, because: [shiftBecause], letsSleep: true });
  return limits;
}

/** Null when the ward asks for a look before the next move only. */
function triggerLimit(trigger: Trigger, input: TrustInput): Limit | null {
  const hours = input.rules.validity.triggers[trigger.kind];
  if (!hours || hours.value === null) return null;
  const words =
    `${trigger.words}, ${saidAt(input, trigger.at)}: ` +
    `looked at within ${hours.value} h, also without a move (${hours.source})`;
  return {
    at: trigger.at + hours.value * HOUR,
    because: [say('due/trigger-limit', [trigger.event], words)],
    letsSleep: false,
  };
}

function backOnWard(limit: Limit, away: readonly TimeAway[], input: TrustInput): Limit {
  const { at, back } = dueAfterAway(limit.at, away, input.rules);
  if (!back) return limit;
  const hours = input.rules.validity.afterReturnHours;
  const words =
    `Ran out while off the ward; back ${saidAt(input, back.back)}: ` +
    `before the next move, within ${hours.value} h at the latest (${hours.source})`;
  return { ...limit, at, because: [say('due/after-return', [back.cameBack], words), ...limit.because] };
}

/** With the time by which somebody looks even when the person does not move, where the ward gave one. */
function beforeNextMove(trigger: Trigger, away: readonly TimeAway[], input: TrustInput): Because {
  const limit = triggerLimit(trigger, input);
  const by = limit
    ? `, and by ${saidAt(input, dueAfterAway(limit.at, away, input.rules).at)} also without one`
    : '';
  const words = `${trigger.words}, ${saidAt(input, trigger.at)}: before the next move${by}`;
  return say('due/trigger', [trigger.event], words);
}
