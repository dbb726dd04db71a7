/** Invented stays, and how the board shows them told in words: whole, or what one entry more changes. */
import type { Role } from '../../../kernel/author.ts';
import { telling } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import type { TaskPlan } from '../moving-view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, recordOf, ward, begun, type Told } from './history.testkit.ts';

export type History = readonly Told[];
export const role = (told: Told, who: Role): Told => ({ ...told, role: who });
export const named = (told: Told, id: string): Told => ({ ...told, id });
export const told = (type: string, at: number, payload: object = {}, id = type): Told => ({
  type,
  at,
  payload,
  id,
});

/** A whole pressure set; standing at `one` mmHg after 130 lying. */
export function pressures(at: number, one = 126) {
  const pressure = (posture: string, minute: number, systolic: number) => ({
    kind: 'pressure',
    posture,
    minute,
    systolic,
    diastolic: 76,
    at: toIso(hours(at + (posture === 'lying' ? 0 : minute / 60))),
  });
  return {
    depth: 'full-with-pressure',
    risingSymptoms: [],
    readings: [pressure('lying', 5, 130), pressure('standing', 1, one), pressure('standing', 3, one)],
  };
}

const known: History = [
  named(begun(), 'begun'),
  told('weight-recorded', 0.1, { weight: { kg: 70, how: 'measured' } }, 'weight'),
  told('usual-way-recorded', 0.2, { usual: { moves: 'walks', transfers: 'alone', stairs: 'yes' } }, 'usual'),
];
/** To whom one entry more happens. */
export const STAYS: Readonly<Record<string, History>> = {
  walks: [
    ...known,
    named(check('walk', 0.5, {}, pressures(0.5)), 'check'),
    told('goal-set', 0.6, { goal: { activity: 'walk', timesUp: 3, metres: 20 } }, 'goal'),
  ],
  'sits at the edge': [...known, named(check('edge', 0.5), 'check')],
  'only arrived': [named(begun(), 'begun')],
};

const task = ({ task: of, hold, people, aid }: TaskPlan) => `${of} ${hold ? 'HOLD ' : ''}${people} ${aid}`;

/** All of a row but the reasons and cautions of its tasks and of the start, which their own rooms hold. */
export function shown(history: History, at: number): string[] {
  const before = seenBefore.get(history)?.get(at);
  if (before) return before;
  const lines = seen(history, at);
  seenBefore.set(history, new Map([...(seenBefore.get(history) ?? []), [at, lines]]));
  return lines;
}
/** Stays without anything more are asked about again and again. */
const seenBefore = new WeakMap<History, ReadonlyMap<number, string[]>>();
function seen(history: History, at: number): string[] {
  const { view, nextChange } = evaluateStay(recordOf(history), ward, calendar, hours(at));
  const { plan, mayStart, version, lately, ...row } = view;
  const night = plan?.night.map(task).join('; ');
  const day = plan?.day.map(task).join('; ') ?? 'no plan';
  return telling({
    ...row,
    version,
    lately:
      lately &&
      `${lately.last?.event} ${lately.last?.outcome}, no ${lately.saidNo?.event}, meal ${lately.meal?.event}, yesterday ${lately.yesterday?.timesUp}`,
    day,
    night: night === day ? 'as by day' : night,
    mayStart: mayStart?.word ?? 'no staged check',
    until: nextChange,
  });
}

/** What came; and of lists what went. */
export function change(before: readonly string[], after: readonly string[]): string[] {
  const come = after.filter((line) => !before.includes(line)).map((line) => `+ ${line.trim()}`);
  const gone = before.filter((line) => !after.includes(line) && line.trim().startsWith('- '));
  return [...come, ...gone.map((line) => `- ${line.trim().slice(2)}`)];
}
