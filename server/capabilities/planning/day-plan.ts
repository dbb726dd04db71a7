/**
 * The day plan as it is asked for: what the rest of the ward day needs, a proposal for it, and what
 * would change. Reads alone: nothing of it goes to the ward's log before a person accepts a plan.
 */
import type { Usable } from '@footboard/shared/capabilities/aids/rules/usable';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import { planInForce } from '@footboard/shared/capabilities/board/rules/day-plan';
import { foldHuddle } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import { instantOf } from '@footboard/shared/capabilities/planning/problem';
import type { DayProblem } from '@footboard/shared/capabilities/planning/problem';
import type { DayProposal } from '@footboard/shared/capabilities/planning/proposal';
import { breachWords } from '@footboard/shared/capabilities/planning/rules/breach-words';
import { buildProblem } from '@footboard/shared/capabilities/planning/rules/build-problem';
import type { BuiltProblem } from '@footboard/shared/capabilities/planning/rules/build-problem';
import { changed, goesWithout } from '@footboard/shared/capabilities/planning/rules/changed';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import type { Change } from '@footboard/shared/capabilities/planning/rules/changed';
import { SLOT } from '@footboard/shared/capabilities/planning/rules/people-on';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { streamKey } from '@footboard/shared/kernel/event-type';
import { toEpoch } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type {
  DayPlanPage,
  PlanChecked,
  PlanToCheck,
  ProposedDay,
  WhatIfAsked,
  WhatIfPage,
} from '@footboard/shared/wire/planning';
import type { Streams } from '../../commanding/streams.ts';
import { canonical, hashText } from '../../log/canonical.ts';
import type { Boards } from '../../projecting/board.ts';
import { fitPageOf, itemsPageOf } from '../aids/queries.ts';
import { boardNow } from '../board/queries.ts';
import type { Planner } from './planner.ts';

export interface DayPorts {
  readonly streams: Streams;
  readonly boards: Boards;
}
interface Asked {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly now: EpochMs;
}
interface Day {
  readonly built: BuiltProblem;
  readonly page: DayPlanPage;
  readonly seconds: number;
}

async function dayOf({ streams, boards }: DayPorts, asked: Asked): Promise<Day> {
  const { ward, calendar, now } = asked;
  const rules = rulesOf(ward);
  const stream = streamKey('ward', ward.ward);
  const [read, fit, items] = await Promise.all([
    streams.read([{ ward: ward.ward, stream }]),
    fitPageOf({ streams, boards }, asked),
    itemsPageOf(streams, asked),
  ]);
  const { events } = read.slice(ward.ward, stream);
  const { p, board } = boardNow(boards, ward.ward);
  const day = localDate(ward.zone, calendar.wardDay(now).from);
  const accepted = planInForce(ward, calendar, now);
  const fits = new Map(fit.stays.map(({ stay, tasks }) => [stay as string, tasks]));
  const built = buildProblem({
    t: now,
    ward,
    calendar,
    rules,
    stays: board.beds.flatMap((bed) =>
      bed.stay ? [{ bed, stay: bed.stay, fit: fits.get(bed.stay.stay) ?? [] }] : [],
    ),
    expected: [...foldHuddle(events).expected.values()],
    items: items.items.map(({ item, usable }): { item: ItemId; usable: Usable['word'] } => ({
      item,
      usable: usable.word,
    })),
    accepted,
  });
  const { problem, about, notPlanned, beyond } = built;
  const aboutOf = new Map(about.map((one) => [one.visit as string, one]));
  const page: DayPlanPage = {
    ward: ward.ward,
    day,
    position: p,
    at: now,
    start: problem.grid.start,
    slots: problem.grid.slots,
    visits: [...problem.visits, ...beyond].map((v) => {
      const { visit, stay, bay, isolation, kind, activity, aid, people, length, firstTimeUp, sets } = v;
      const { label, nth, expected } = aboutOf.get(visit)!;
      return {
        visit,
        stay,
        bay,
        isolation,
        kind,
        activity,
        aid,
        people,
        length,
        firstTimeUp,
        sets,
        label,
        nth,
        expected,
      };
    }),
    staff: problem.staff.map(({ staff, role, on, breaks, taken }) => ({ staff, role, on, breaks, taken })),
    items: [...ward.items].map(([item, { label }]) => ({ item, label })),
    notPlanned: [...notPlanned],
    accepted: accepted && {
      ...accepted,
      placements: accepted.placements.map(copied),
      unplaced: accepted.unplaced ? [...accepted.unplaced] : undefined,
    },
  };
  return { built, page, seconds: rules.planning.searchSeconds.value };
}
const copied = <T extends { readonly crew: readonly unknown[]; readonly items: readonly unknown[] }>(
  one: T,
) =>
  ({ ...one, crew: [...one.crew], items: [...one.items] }) as {
    -readonly [K in keyof T]: T[K] extends readonly (infer V)[] ? V[] : T[K];
  };

export const dayPlanPage = async (ports: DayPorts, asked: Asked): Promise<DayPlanPage> =>
  (await dayOf(ports, asked)).page;

/** @throws what the planner throws when `signal` is aborted */
export async function proposedDay(
  ports: DayPorts & { readonly planner: Planner },
  asked: Asked,
  signal: AbortSignal,
): Promise<ProposedDay> {
  const { built, page, seconds } = await dayOf(ports, asked);
  const proposal = await ports.planner.plan(built.problem, { seconds, signal });
  const beyond = built.beyond.map(({ visit }) => ({ visit, bound: 'beyond-most' as const, frees: [] }));
  const whole = { ...proposal, unplaced: [...proposal.unplaced, ...beyond] };
  return { ...page, proposal: whole, hash: hashOf(built.problem, whole) };
}

const hashOf = (problem: DayProblem, proposal: DayProposal): string =>
  hashText(canonical({ problem, proposal }));

/**
 * What a plan changed by hand breaks, by the checker that accepting it asks too. What is beyond the most
 * a plan holds may be put in by hand for something else, so it is known here.
 */
export async function checkedPlan(
  ports: DayPorts,
  asked: Asked,
  { start, placements }: PlanToCheck,
): Promise<PlanChecked> {
  const { built } = await dayOf(ports, asked);
  const { problem, beyond } = built;
  const shift = Math.round((start - problem.grid.start) / SLOT);
  // What began in the quarter hours gone by since it was proposed stays as it is.
  const ahead = placements
    .map((one) => ({ ...one, start: one.start + shift }))
    .filter((one) => one.start >= 0 || shift === 0);
  const breaches = checkPlan({ ...problem, visits: [...problem.visits, ...beyond] }, ahead);
  return { breaches: breaches.map((one) => ({ ...one, words: breachWords(one.rule) })) };
}

/** Half the time of a plan: beside the one that is there, only what the change concerns moves. */
const WHAT_IF_SECONDS = 1.6;

export async function whatIf(
  ports: DayPorts & { readonly planner: Planner },
  asked: Asked,
  { change, start, base }: WhatIfAsked,
  signal: AbortSignal,
): Promise<WhatIfPage> {
  const { built } = await dayOf(ports, asked);
  const { problem } = built;
  // The plan to compare with may be a few minutes old: its slots are counted from its own beginning.
  const shift = Math.round((start - problem.grid.start) / SLOT);
  const known = new Set(problem.visits.map(({ visit }) => visit));
  const still = base
    .map((one) => ({ ...one, start: one.start + shift }))
    .filter((one) => known.has(one.visit) && one.start >= 0 && one.start < problem.grid.slots);
  const other = changed(problem, changeOf(change, problem, asked.ward), still);
  const proposal = await ports.planner.plan(other, { seconds: WHAT_IF_SECONDS, signal });
  return { without: goesWithout(still, proposal.placed), proposal: inSlotsOf(proposal, shift) };
}

function changeOf(change: WhatIfAsked['change'], problem: DayProblem, ward: WardState): Change {
  const into = (iso: string): number => (toEpoch(iso) - instantOf(problem, 0)) / SLOT;
  // Whoever leaves, and what fails, within a quarter hour is not there for all of it.
  const lastWhole = (iso: string): number => Math.max(0, Math.floor(into(iso)));
  switch (change.kind) {
    case 'person-away':
      return { kind: change.kind, staff: change.staff, from: lastWhole(change.from) };
    case 'item-lost':
      return {
        kind: change.kind,
        item: change.item,
        from: change.from === undefined ? 0 : lastWhole(change.from),
      };
    case 'one-more-arrival':
      return {
        kind: change.kind,
        at: Math.max(0, Math.ceil(into(change.at))),
        hours: rulesOf(ward).validity.firstCheckHours.value,
      };
  }
}

/** Counted as the plan it is compared with counts. */
function inSlotsOf(proposal: DayProposal, shift: number): DayProposal {
  if (shift === 0) return proposal;
  const back = <T extends { start: number }>(one: T): T => ({ ...one, start: one.start - shift });
  return {
    ...proposal,
    placed: proposal.placed.map(back),
    moves: proposal.moves.map((m) => ({
      ...m,
      before: m.before && back(m.before),
      after: m.after && back(m.after),
    })),
  };
}
