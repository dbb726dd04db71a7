/**
 * Accepting the plan of a day. What the plan has to keep is worked out anew from the log, for the people
 * and the equipment it names, and a checker that shares no code with the planner judges it.
 */
import { foldItem, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import { usableAt } from '@footboard/shared/capabilities/aids/rules/usable';
import { fitOf } from '@footboard/shared/capabilities/aids/rules/fit';
import type { FitItem } from '@footboard/shared/capabilities/aids/rules/fit';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { foldHuddle } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import * as commands from '@footboard/shared/capabilities/planning/commands';
import * as events from '@footboard/shared/capabilities/planning/events';
import { buildProblem } from '@footboard/shared/capabilities/planning/rules/build-problem';
import type { PlanStay } from '@footboard/shared/capabilities/planning/rules/plan-input';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { breachWords } from '@footboard/shared/capabilities/planning/rules/breach-words';
import { SLOT } from '@footboard/shared/capabilities/planning/rules/people-on';
import { standingOf as standingNow } from '@footboard/shared/capabilities/stays/rules/standing';
import type { Breach } from '@footboard/shared/capabilities/planning/proposal';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { DataOf } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import { toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { sayAt, standingOf, stayStream } from '../stays/standing.ts';

type Plan = DataOf<typeof commands.acceptDayPlan>;
const itemStream = (item: string) => streamKey('item', item);
const distinct = <T>(all: readonly T[]): T[] => [...new Set(all)];

/** The equipment the plan names, as it is known now. */
function itemsOf(plan: Plan, context: DecideContext): FitItem[] {
  const ward = context.ward!;
  const rules = rulesOf(ward).aids;
  const today = localDate(ward.zone, context.calendar!.wardDay(context.occurred).from);
  return distinct(plan.placements.flatMap(({ items }) => items)).flatMap((item) => {
    const is = ward.items.get(item);
    if (!is) return [];
    const state = context.slice(itemStream(item)).events.reduce(foldItem, NOTHING_SEEN);
    const now = usableAt(is, state, context.occurred, today, rules, () => undefined);
    return [{ item, is, state, now }];
  });
}

/** The people the plan names who are here, each as the board shows them. */
function staysOf(plan: Plan, context: DecideContext, items: readonly FitItem[]): PlanStay[] {
  const ward = context.ward!;
  return distinct(plan.placements.map(({ stay }) => stay)).flatMap((stay) => {
    const record = context.stay(stay);
    const standing = standingOf(record);
    const place = ward.beds.find(({ bed }) => bed === standing?.bed);
    if (!standing || standing.ended !== null || !place) return [];
    const { view } = evaluateStay(record, ward, context.calendar!, context.occurred);
    const bed: BedView = { ...place, state: view.away ? 'away' : 'occupied', carers: null, stay: view };
    const facts = effectiveFacts(record).facts.filter((fact) => fact.occurred <= context.occurred);
    const weight = standingNow(facts).weight?.value ?? null;
    const fit = (view.plan?.day ?? []).map((task) => ({
      task: task.task,
      ...fitOf({ plan: task, stay: view, bed, weight, items, rules: rulesOf(ward) }),
    }));
    return [{ bed, stay: view, fit }];
  });
}

const acceptDayPlan = decider({
  command: commands.acceptDayPlan,
  reads: (data, ward) => [
    { ward, stream: streamKey('ward', ward) },
    ...distinct(data.placements.map(({ stay }) => stay)).map((stay) => ({ ward, stream: stayStream(stay) })),
    ...distinct(data.placements.flatMap(({ items }) => items)).map((item) => ({
      ward,
      stream: itemStream(item),
    })),
  ],
  decide: (data, context) => {
    const ward = context.ward!;
    const calendar = context.calendar!;
    const day = localDate(ward.zone, calendar.wardDay(context.occurred).from);
    if (day !== data.day) {
      return refuse(
        'plan-of-another-day',
        `the plan is of the ward day of ${data.day}, and it is the one of ${day} now`,
        'Make a plan for today.',
        '/day',
      );
    }
    const items = itemsOf(data, context);
    const { problem } = buildProblem({
      t: context.occurred,
      ward,
      calendar,
      rules: rulesOf(ward),
      stays: staysOf(data, context, items),
      expected: [...foldHuddle(context.slice(streamKey('ward', ward.ward)).events).expected.values()],
      items: items.map(({ item, now }) => ({ item, usable: now.word })),
      accepted: null,
    });
    // A visit that has begun by now stays in the plan; what is ahead is judged.
    const ahead = data.placements.flatMap((one) => {
      const start = (toEpoch(one.start) - problem.grid.start) / SLOT;
      return start < 0 && toEpoch(one.start) + SLOT > context.occurred - SLOT ? [] : [{ ...one, start }];
    });
    const offGrid = ahead.find(({ start }) => !Number.isInteger(start) || start < 0);
    const breaches: readonly Pick<Breach, 'rule' | 'visit'>[] = offGrid
      ? [{ rule: 'window', visit: offGrid.visit }]
      : checkPlan(
          problem,
          ahead.map(({ visit, start, crew, items: used }) => ({ visit, start, crew, items: used })),
        );
    const [first] = breaches;
    if (first) {
      const at = data.placements.findLastIndex(({ visit }) => visit === first.visit);
      const placement = data.placements[at]!;
      const bed = staysOf(data, context, items).find(({ stay }) => stay.stay === placement.stay)?.bed.label;
      return refuse(
        'plan-breaks-rule',
        `the visit to bed ${bed ?? '-'} at ${sayAt(context, toEpoch(placement.start))}: ${breachWords(first.rule)}`,
        'Move or drop that visit, or make the plan anew from how the ward is now.',
        `/placements/${at}`,
      );
    }
    return accept(newEvent(events.dayPlanAccepted, streamKey('ward', ward.ward), data));
  },
});

export const dayPlanDeciders = underPolicy([acceptDayPlan]);
