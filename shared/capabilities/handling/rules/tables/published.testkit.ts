/** Rows of the published tables as lines of words, and people who meet a row's conditions. */
import type { TaskPlan } from '../../../board/moving-view.ts';
import type { AidClass, People, Task } from '../../values.ts';
import { aidCovers, atLeast } from '../help.ts';
import { planInput, walker, weight } from '../plan.testkit.ts';
import type { PlanInput } from '../types.ts';
import type { Table } from './table.ts';
import { rowFor } from './table.ts';

/** "one belt or one standing-aid": the options in the order printed, a range as "two..three-or-more". */
export const printed = <W extends object>(table: Table<W>, facts: W): string =>
  rowFor(table, facts)
    .options.map(({ people: [low, high], aid }) => `${low === high ? low : `${low}..${high}`} ${aid}`)
    .join(' or ');

/** The options of such a line, each with the higher people of its range. */
const parse = (line: string): [People, AidClass][] =>
  line.split(' or ').map((option) => {
    const [range, aid] = option.split(' ');
    return [range!.split('..').at(-1), aid] as [People, AidClass];
  });
/** HOLD, or as many people as some option and an aid that covers its aid. */
export const asksFor = (plan: TaskPlan, line: string): boolean =>
  plan.hold ||
  parse(line).some(([people, aid]) => atLeast(plan.people, people) && aidCovers(plan.task, aid, plan.aid));
export const short = (plan: TaskPlan): string => `${plan.hold ? 'HOLD ' : ''}${plan.people} ${plan.aid}`;

/** Someone seen to walk free, with what the row asks of the person put in place of what was seen. */
export function person(over: Partial<PlanInput['capability']>, kg: number | null = 70): PlanInput {
  const input = planInput(walker, kg === null ? { weight: null } : weight(kg));
  return { ...input, capability: { ...input.capability, ...over } };
}
const BEARING = {
  full: { 'left-leg': 'unrestricted', 'right-leg': 'unrestricted' },
  partial: { 'left-leg': 'limited', 'right-leg': 'unrestricted' },
  none: { 'left-leg': 'none', 'right-leg': 'none' },
} as const;
export const who = (bears: keyof typeof BEARING, cooperative: boolean, arms: boolean) => ({
  bears,
  weightBearing: BEARING[bears],
  waitsForHelp: cooperative ? ('yes' as const) : ('no' as const),
  armStrength: arms ? ('both' as const) : ('none' as const),
});
export const twice = ['bed-chair', 'toilet'] as const satisfies Task[];
