/** What changed in the help for one person, task by task: more, less, or another way that is neither. */
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { help, noLess } from '../../handling/rules/help.ts';
import type { Task } from '../../handling/values.ts';
import type { ChangeKind } from '../values.ts';

/** The move that a ward speaks of first. */
const FIRST: readonly Task[] = ['bed-chair', 'toilet', 'edge-of-bed', 'stand', 'walk'];
const MOVE: Readonly<Record<Task, string>> = {
  'in-bed': 'turn or move up in bed',
  'edge-of-bed': 'edge of bed',
  'bed-chair': 'bed to chair',
  toilet: 'toilet',
  lateral: 'across to a trolley',
  stand: 'stand',
  walk: 'walk',
  'from-floor': 'up from the floor',
  'in-chair': 'move up in the chair',
};
const PEOPLE: Readonly<Record<TaskPlan['people'], string>> = {
  'on-own': 'on own',
  'stand-by': 'stand by',
  one: '1 person',
  two: '2 people',
  'three-or-more': '3 people or more',
};
export type HelpKind = Extract<ChangeKind, 'more-help' | 'other-help' | 'less-help'>;
const TITLE: Readonly<Record<HelpKind, string>> = {
  'more-help': 'More help',
  'other-help': 'Other help',
  'less-help': 'Less help',
};

interface Changed {
  readonly kind: HelpKind;
  readonly was: TaskPlan;
  readonly now: TaskPlan;
  readonly night: boolean;
}
export interface HelpChange {
  readonly kind: HelpKind;
  readonly words: string;
  readonly because: Because[];
}

export function helpChanges(before: StayView, now: StayView): HelpChange[] {
  if (!before.plan || !now.plan) return scopeChange(before, now);
  const changed = [
    ...tasks(before.plan.day, now.plan.day, false),
    ...tasks(before.plan.night, now.plan.night, true),
  ];
  return (['more-help', 'other-help', 'less-help'] as const).flatMap((kind) => {
    const of = changed.filter((one) => one.kind === kind).toSorted((a, b) => rank(a) - rank(b));
    return of.length > 0 ? [{ kind, words: wordsOf(kind, of), because: of[0]!.now.because }] : [];
  });
}

function tasks(before: readonly TaskPlan[], now: readonly TaskPlan[], night: boolean): Changed[] {
  return now.flatMap((plan) => {
    const was = before.find((one) => one.task === plan.task);
    const kind = was && helpKind(was, plan);
    return was && kind ? [{ kind, was, now: plan, night }] : [];
  });
}

/** Null where neither asks for more or for something else: the help is the same. */
export function helpKind(was: TaskPlan, now: TaskPlan): HelpKind | null {
  const [a, b] = [was, now].map((p) => help(p.people, p.aid, p.hold)) as [
    ReturnType<typeof help>,
    ReturnType<typeof help>,
  ];
  const [keeps, kept] = [noLess(now.task, a, b), noLess(now.task, b, a)];
  if (keeps && kept) return null;
  return keeps ? 'more-help' : kept ? 'less-help' : 'other-help';
}

/** By day before by night; within it the moves in the order they are spoken of. */
const rank = ({ now, night }: Changed): number => {
  const at = FIRST.indexOf(now.task);
  return (night ? 100 : 0) + (at < 0 ? FIRST.length : at);
};

/** "More help: bed to chair now 2 people, sling lift (was 1 person, belt); also toilet". */
function wordsOf(kind: HelpKind, all: readonly Changed[]): string {
  const [first] = all as [Changed];
  const also = [...new Set(all.map(({ now }) => now.task))].filter((task) => task !== first.now.task);
  return (
    `${TITLE[kind]}: ${MOVE[first.now.task]}${first.night ? ' at night' : ''} now ${inBrief(first.now, first.was)} (was ${inBrief(first.was, first.now)})` +
    (also.length > 0 ? `; also ${also.map((task) => MOVE[task]).join(', ')}` : '')
  );
}
/** Where both are on hold, what applies if it cannot wait is what changed. */
function inBrief(p: TaskPlan, other: TaskPlan): string {
  if (p.hold && !other.hold) return 'HOLD';
  const words = `${PEOPLE[p.people]}, ${p.aid === 'none' ? 'no aid' : p.aid.replaceAll('-', ' ')}`;
  return p.hold ? `HOLD, if it cannot wait ${words}` : words;
}

/** Between a plan of the board and a clinician's or comfort plan there is no more and no less. */
function scopeChange(before: StayView, now: StayView): HelpChange[] {
  if (before.scope.kind === now.scope.kind) return [];
  const words =
    now.scope.kind === 'comfort'
      ? 'Comfort plan now'
      : now.scope.kind === 'clinicians-plan'
        ? "Clinician's plan only now"
        : 'The staged check applies again';
  return [{ kind: 'other-help', words, because: now.trust.because }];
}
