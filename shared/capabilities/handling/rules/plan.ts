/**
 * The plan: for every task, by day and by night, people and aid first, with the rules and facts that
 * decided. Every rule is a demand and demands only join, so no fact can lower what another asks for;
 * "on own" is the one step down, and only a qualified person sets it. Not a substitute for judgement:
 * orders, local policy and the clinician at the bedside come first.
 */
import { NOT_KNOWN } from '../../assessments/rules/tier.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { Task } from '../values.ts';
import { task as taskValues } from '../values.ts';
import { baseHelp } from './base-help.ts';
import type { Demand } from './demand.ts';
import { caution, demand, note, onePersonMore, stop } from './demand.ts';
import type { Help } from './help.ts';
import { aidCovers, joinHelp, mustAsk, NO_HELP, topAids, withMore } from './help.ts';
import {
  holdDemands,
  orderDemands,
  scopeDemands,
  slingDemands,
  surgeryDemands,
  triggerDemands,
} from './limits.ts';
import { legDemands } from './manual-load.ts';
import { attachmentDemands, pressureDemands, sedatedUntil, weightDemands } from './more-people.ts';
import { staysCautions } from './stay-cautions.ts';
import { onOwnHeldBack, onOwnReaches, onOwnStands } from './on-own.ts';
import { CHAIR_TO_TROLLEY } from './tables/transfer.ts';
import { fromChairWords } from './transfer-help.ts';
import type { PlanInput } from './types.ts';

export interface StayPlan {
  /** One plan a task, in the order of the task list. */
  readonly day: TaskPlan[];
  readonly night: TaskPlan[];
  readonly checkBeforeMoving: boolean;
  readonly cautions: { words: string; because: Because[] }[];
  /** The next instant at which this plan can change with no new fact; null when there is none. */
  readonly nextChange: EpochMs | null;
}

const notKnown = (input: PlanInput): boolean =>
  input.tier.word === NOT_KNOWN || input.trust.state === 'not-known';

/** When "seen walking steadily" ends, or null when it does not apply at `t`. */
function seenWalkingUntil(input: PlanInput): EpochMs | null {
  const seen = input.seenWalking;
  if (!seen || input.tier.word !== NOT_KNOWN) return null;
  const until = seen.at + input.rules.handling.seenWalkingHours.value * HOUR;
  const since = input.trust.openTriggers.some((o) => o.kind !== 'arrival' && o.at >= seen.at);
  // Seen on both legs, before or after an order that one may not bear: the order stands.
  const ordered = [...input.orders.weightBearing].some(
    ([limb, { value }]) => limb.endsWith('-leg') && value.bears !== 'unrestricted',
  );
  return input.t < until && !since && !ordered ? until : null;
}

function seenWalkingDemands(input: PlanInput): Demand[] {
  const seen = input.seenWalking!;
  const support = seen.value;
  return [
    demand(
      'not-known/seen-walking',
      `A nurse saw the person walk steadily on arrival: stand by for ${input.rules.handling.seenWalkingHours.value} h`,
      [seen.fact],
      'stand-by',
      'none',
      { with: support === 'none' ? [] : [support.replaceAll('-', ' ')] },
    ),
  ];
}

/** CHECK BEFORE MOVING; and if it cannot wait, the last known plan joined with two people and a sling lift. */
function notKnownDemands(task: Task, input: PlanInput): Demand[] {
  const words = 'CHECK BEFORE MOVING: not known here. If it cannot wait: two people';
  const base = baseHelp(task, input);
  if (task === 'stand' || task === 'walk') {
    return [
      ...base,
      demand(
        'not-known',
        `${words} and a sling lift; no standing or walking`,
        [input.arrival],
        'two',
        'sling-lift',
      ),
      stop('not-known', 'Not known here: no standing or walking before a check', [input.arrival]),
    ];
  }
  const weight = input.capability.weightKg;
  const heavy = weight === null || weight >= input.rules.handling.bariatricFromKg.value;
  const lying = task === 'in-bed' || task === 'lateral';
  return [
    ...base,
    demand(
      'not-known',
      lying ? words : `${words} and a sling lift`,
      [input.arrival],
      lying && heavy ? 'three-or-more' : 'two',
      lying ? 'none' : 'sling-lift',
    ),
  ];
}

interface Composed {
  readonly help: Help;
  readonly more: number;
  readonly demands: readonly Demand[];
}

/** Derived help starts at "stand by": on own is never derived. */
const STAND_BY = demand('stand-by', 'Stand by unless a nurse or therapist sets "on own"', [], 'stand-by');

function checkAgainDemands({ trust }: PlanInput): Demand[] {
  if (trust.state !== 're-check') return [];
  const facts = trust.because.flatMap((b) => b.facts);
  return [note('trust/re-check', 'Re-check: the last plan is kept until then, never less', facts)];
}

/** Demands that are the same for every task. */
interface OfEveryTask {
  readonly checkAgain: readonly Demand[];
  readonly tethers: readonly Demand[];
}

function compose(
  task: Task,
  input: PlanInput,
  seenWalking: boolean,
  { checkAgain, tethers }: OfEveryTask,
): Composed {
  // Nobody who was seen walking is on the floor by habit: that plan does not speak of it.
  const base =
    seenWalking && task !== 'from-floor'
      ? seenWalkingDemands(input)
      : notKnown(input)
        ? notKnownDemands(task, input)
        : baseHelp(task, input);
  const demands = [
    STAND_BY,
    ...base,
    ...scopeDemands(task, input),
    ...holdDemands(task, input),
    ...orderDemands(task, input),
    ...checkAgain,
    ...surgeryDemands(task, input),
    ...triggerDemands(task, input),
    ...pressureDemands(task, input),
    ...tethers,
  ];
  const joined = demands.reduce((h, d) => joinHelp(h, d.help), NO_HELP);
  const byWeight = weightDemands(input, joined.aids);
  const total = byWeight.reduce((h, d) => joinHelp(h, d.help), joined);
  return {
    help: total,
    more: demands.reduce((sum, d) => sum + d.more, 0),
    demands: [
      ...demands,
      ...byWeight,
      ...slingDemands(input, total.aids),
      ...legDemands(task, total.people, input),
    ],
  };
}

const distinct = (words: string[]): string[] => (words.length > 1 ? [...new Set(words)] : words);
/** What decided: not the floor of "stand by" beside more, and not what only cautions. */
const decided = (d: Demand, h: Help): boolean =>
  d.because.rule === 'stand-by'
    ? h.people === 'stand-by' && h.aids.length === 0
    : d.help.hold || d.more > 0 || d.help.people !== 'on-own' || d.help.aids.length > 0 || d.tells;

interface Own {
  readonly rule: Because | null;
  /** Why it was set and does not count. */
  readonly heldBack: Because | null;
}

/** Rules whose reason applies to everyone, whatever was seen: it names no entry. */
export const TO_ALL: ReadonlySet<string> = new Set(['stand-by', 'manual-load']);
/** A reason without an entry of its own stands on what was seen until now, and before a check on the arrival. */
function standingOn(input: PlanInput, b: Because): Because {
  if (b.facts.length > 0 || TO_ALL.has(b.rule)) return b;
  const checked = input.tier.because[0]?.facts ?? [];
  return { ...b, facts: checked.length > 0 || !input.arrival ? [...checked] : [input.arrival] };
}

function say(task: Task, input: PlanInput, composed: Composed, own: Own): TaskPlan {
  const { help, more, demands } = composed;
  const ask = mustAsk(task, help);
  const top = topAids(task, help);
  const aid = top.at(-1) ?? 'none';
  const cannotCombine = ask && !help.hold;
  const beside = demands.filter(
    (d) => d.with.length && d.help.aids.every((a) => aidCovers(task, aid, a) || a === 'walking-support'),
  );
  const transfer = task === 'bed-chair' || task === 'toilet';
  return {
    task,
    hold: ask,
    people: own.rule ? 'on-own' : withMore(help.people, more),
    aid,
    with: distinct(beside.flatMap((d) => d.with)),
    towards: transfer ? input.capability.strongerSide : null,
    cautions: distinct([
      ...(cannotCombine
        ? [
            `Two rules ask for aids that cannot be combined (${help.aids.map((a) => a.replaceAll('-', ' ')).join(', ')}): ask`,
          ]
        : []),
      ...demands.flatMap((d) => d.cautions),
    ]),
    because: onceEach([
      ...(own.rule ? [own.rule] : []),
      ...(own.heldBack ? [own.heldBack] : []),
      ...demands.filter((d) => decided(d, help)).map((d) => standingOn(input, d.because)),
    ]),
  };
}

/** One reason may stop a task and ask for a person more: it is told once. */
const onceEach = (all: readonly Because[]): Because[] =>
  all.filter((b, i) => all.findIndex((a) => a.words === b.words && sameReason(a, b)) === i);
const sameReason = (a: Because, b: Because): boolean =>
  a.rule === b.rule && a.facts.length === b.facts.length && a.facts.every((f, i) => f === b.facts[i]);

export function planStay(input: PlanInput): StayPlan {
  const walkingUntil = seenWalkingUntil(input);
  const sedated = sedatedUntil(input);
  const ofEveryTask = { checkAgain: checkAgainDemands(input), tethers: attachmentDemands(input) };
  const ownStands = onOwnStands(input);
  const day: TaskPlan[] = [];
  const night: TaskPlan[] = [];
  const all = new Map(
    taskValues.options.map((task) => [task, compose(task, input, walkingUntil !== null, ofEveryTask)]),
  );
  const onFeet = [...all.get('stand')!.demands, ...all.get('walk')!.demands];
  const chair = all.get('bed-chair')!;
  const atNight = (c: Composed): Composed =>
    sedated === null
      ? c
      : withDemand(
          c,
          onePersonMore(
            'night/sedative',
            `Night, within ${input.rules.handling.sedativeNightHours.value} h of a sedative: one more person`,
            [input.sedatedAt?.fact],
          ),
        );
  for (const [task, composed] of all) {
    const heldBack = onOwnHeldBack(task, input, onFeet);
    const own = (when: 'day' | 'night', c: Composed) =>
      ownStands && !heldBack && c.more === 0 && !mustAsk(task, c.help) && c.help.people === 'stand-by'
        ? onOwnReaches(task, when, c.help, input)
        : null;
    const ownByDay = own('day', composed);
    const byDay = say(task, input, fromChair(task, input, composed, chair), { rule: ownByDay, heldBack });
    day.push(byDay);

    const byNight = atNight(composed);
    // Never less at night than by day.
    const ownByNight = ownByDay && own('night', byNight);
    night.push(
      byNight === composed && !ownByDay
        ? byDay
        : say(task, input, fromChair(task, input, byNight, atNight(chair)), { rule: ownByNight, heldBack }),
    );
  }
  const changes = [input.capability.nextChange, walkingUntil, sedated].filter((c) => c !== null);
  return {
    day,
    night,
    checkBeforeMoving: notKnown(input) && walkingUntil === null,
    cautions: staysCautions(input, sedated),
    nextChange: changes.length ? Math.min(...changes) : null,
  };
}

/** The words beside the way to a trolley speak of a chair: never of less than the way from bed to chair. */
function fromChair(task: Task, input: PlanInput, composed: Composed, chair: Composed): Composed {
  if (task !== 'lateral') return composed;
  const words = fromChairWords(input, {
    hold: mustAsk('bed-chair', chair.help),
    people: withMore(chair.help.people, chair.more),
    aid: topAids('bed-chair', chair.help).at(-1) ?? 'none',
  });
  const demands = composed.demands.map((d) =>
    d.because.rule === CHAIR_TO_TROLLEY.rule ? caution(CHAIR_TO_TROLLEY.rule, words, []) : d,
  );
  return { ...composed, demands };
}

const withDemand = (c: Composed, d: Demand): Composed => ({
  help: joinHelp(c.help, d.help),
  more: c.more + d.more,
  demands: [...c.demands, d],
});
