/** The table behind a stay's course: every span and mark of the picture, oldest first, in words. */
import type { StayCourse } from '@footboard/shared/wire/pictures';
import { HOLD_SCOPE, TRUST } from '../board/words.ts';
import { say as sayCode, sayInside } from '../capabilities/words.ts';
import { told } from '../i18n/told.ts';
import { goalIs } from './course-shapes.ts';
import { say } from './words.ts';

export const outcomeWords = ({ outcome, group }: StayCourse['sessions'][number]): string =>
  outcome === 'not-done' && group ? say('not-done-why', { why: sayInside(group) }) : say(outcome);

export const sessionWords = (one: StayCourse['sessions'][number]): string =>
  say('session-is', {
    what: one.activity ? sayCode(one.activity) : say('session'),
    outcome: outcomeWords(one),
  });

const tierIs = (tier: string | null, trust: StayCourse['standing'][number]['trust']): string =>
  tier === null ? say('no-tier') : say('tier-is', { word: told(tier), trust: TRUST[trust] });

type Day = StayCourse['days'][number];
/** Whether a ward day is not over: what is missing may still come. */
export const isRunning = (day: Pick<Day, 'to'>, course: Pick<StayCourse, 'to' | 'ended'>): boolean =>
  !course.ended && day.to >= course.to;

export function goalIsWords(goal: NonNullable<Day['goal']>, running: boolean): string {
  const is = say(goalIs(goal));
  return running && goal.met !== true ? say('so-far', { is }) : is;
}
const goalWords = (goal: NonNullable<Day['goal']>, running: boolean): string =>
  say(goal.proposed ? 'goal-proposed-is' : 'goal-is', { is: goalIsWords(goal, running) });

interface Line {
  readonly at: number;
  /** Null for what has no length, and for a hold that still stands. */
  to: number | null;
  readonly what: string;
  readonly stands?: boolean;
}

/** Neighbours of the same words are one line; where there are no words there is none. */
function joined(
  spans: StayCourse['standing'],
  words: (span: StayCourse['standing'][number]) => string | null,
): Line[] {
  const lines: Line[] = [];
  let before: string | null = null;
  for (const span of spans) {
    const what = words(span);
    if (what !== null) {
      if (what === before) lines.at(-1)!.to = span.to;
      else lines.push({ at: span.from, to: span.to, what });
    }
    before = what;
  }
  return lines;
}

const moment = (at: number, what: string): Line => ({ at, to: null, what });

/** `time` writes an instant on the ward's clock. */
export function courseRows(course: StayCourse, time: (at: number) => string): string[][] {
  const lines = [
    ...joined(course.standing, ({ tier, trust }) => tierIs(tier, trust)),
    ...joined(course.standing, ({ away }) => (away ? say('away') : null)),
    ...course.holds.map(({ from, to, scope }) => ({
      at: from,
      to,
      stands: to === null,
      what: say('hold-is', { scope: HOLD_SCOPE[scope] }),
    })),
    ...course.triggers.map(({ at, kind }) => moment(at, say('trigger-is', { what: sayInside(kind) }))),
    ...course.sessions.map((one) => moment(one.at, sessionWords(one))),
    ...course.days.flatMap(({ from, to, recorded }) =>
      recorded ? [] : [{ at: from, to, what: say('nothing-recorded') }],
    ),
    ...course.days.flatMap(({ from, to, goal }) =>
      goal ? [{ at: from, to, what: goalWords(goal, isRunning({ to }, course)) }] : [],
    ),
  ];
  const until = ({ to, stands = false }: Line): string => {
    if (stands) return say('still-stands');
    if (to === null) return '';
    return to === course.to && !course.ended ? say('now') : time(to);
  };
  return lines.toSorted((a, b) => a.at - b.at).map((one) => [time(one.at), one.what, until(one)]);
}
