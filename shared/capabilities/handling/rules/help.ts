/**
 * Help for a task as a lattice: hold, people, aid. Joining takes the greatest of each part and never
 * lowers. Aids are only partly ordered: each task declares its own chains, and two aids that no chain
 * of the task puts in order cannot be combined: the join is then a HOLD, ask, never simply the bigger aid.
 */
import type { AidClass, People, Task } from '../values.ts';
import { aidClass, people as peopleValues } from '../values.ts';

export interface Help {
  /** Do not do this task; ask. Set by a rule, not by aids that disagree (see `mustAsk`). */
  readonly hold: boolean;
  readonly people: People;
  /** Every aid that some fact demands, in the order of the list of aids; empty = none. */
  readonly aids: readonly AidClass[];
}

const lift = ['sling-lift', 'bariatric-lift'] as const;
/** Per task: its chains of aids, from least to most help. An aid in no chain can be combined with none. */
export const AID_CHAINS: Readonly<Record<Task, readonly (readonly AidClass[])[]>> = {
  'in-bed': [['slide-sheet', ...lift]],
  'edge-of-bed': [['slide-sheet', ...lift]],
  'bed-chair': [
    ['walking-support', 'belt', 'standing-aid', ...lift],
    ['seated-transfer-aid', ...lift],
    ['slide-sheet', ...lift],
  ],
  toilet: [
    ['walking-support', 'belt', 'standing-aid', ...lift],
    ['seated-transfer-aid', ...lift],
    ['slide-sheet', ...lift],
  ],
  lateral: [['slide-sheet', 'lateral-transfer-aid', ...lift]],
  stand: [['walking-support', 'belt', 'standing-aid', ...lift]],
  walk: [['walking-support', 'belt', 'standing-aid', ...lift]],
  'from-floor': [['slide-sheet', ...lift]],
  'in-chair': [
    ['seated-transfer-aid', ...lift],
    ['slide-sheet', ...lift],
    ['standing-aid', ...lift],
  ],
};

const PEOPLE = peopleValues.options;
const rankOf = (p: People) => PEOPLE.indexOf(p);
export const morePeople = (a: People, b: People): People => (rankOf(a) >= rankOf(b) ? a : b);
export const atLeast = (a: People, b: People): boolean => rankOf(a) >= rankOf(b);

/** `extra` people more than `p`; on own counts as nobody, so the first one more stands by. */
export const withMore = (p: People, extra: number): People =>
  PEOPLE[Math.min(PEOPLE.length - 1, rankOf(p) + Math.max(0, extra))]!;

/** Whether `b` gives at least the support of `a` in this task. */
export function aidCovers(task: Task, a: AidClass, b: AidClass): boolean {
  if (a === b || a === 'none') return true;
  return AID_CHAINS[task].some((chain) => {
    const low = chain.indexOf(a);
    return low >= 0 && chain.indexOf(b) > low;
  });
}

export const NO_HELP: Help = { hold: false, people: 'on-own', aids: [] };

export const help = (people: People, aid: AidClass = 'none', hold = false): Help => ({
  hold,
  people,
  aids: aid === 'none' ? [] : [aid],
});

export const joinHelp = (a: Help, b: Help): Help => ({
  hold: a.hold || b.hold,
  people: morePeople(a.people, b.people),
  aids:
    b.aids.length === 0
      ? a.aids
      : a.aids.length === 0
        ? b.aids
        : aidClass.options.filter((one) => a.aids.includes(one) || b.aids.includes(one)),
});

/** The demanded aids that no other demanded aid covers: one, unless they cannot be combined. */
export const topAids = (task: Task, h: Help): AidClass[] =>
  h.aids.filter((one) => !h.aids.some((other) => other !== one && aidCovers(task, one, other)));

/**
 * A hold by rule, or two facts that demand aids which cannot be combined. A third fact that demands
 * a bigger aid does not settle what the two disagree on: the hold stays.
 */
export const mustAsk = (task: Task, h: Help): boolean =>
  h.hold ||
  h.aids.some((one) => h.aids.some((other) => !aidCovers(task, one, other) && !aidCovers(task, other, one)));

/** Whether `b` gives at least as much help as `a`: holds where `a` holds, as many people, each aid covered. */
export const noLess = (task: Task, a: Help, b: Help): boolean =>
  (!mustAsk(task, a) || mustAsk(task, b)) &&
  atLeast(b.people, a.people) &&
  a.aids.every((one) => b.aids.some((other) => aidCovers(task, one, other)));
