/**
 * The change since an earlier measure of the same kind, done in the same way. Only for speed at the
 * usual pace is a published size of change used (Perera 2006, from memory; in the rules document).
 */
import type { Measure } from '../values.ts';
import { speedOf, type WalkingLimits } from './judge-measure.ts';

export interface Change {
  readonly says: string;
  /** Source of the size of change, where one is used. */
  readonly source: string | null;
}

/** Two measures compare only when all of this is the same. */
const wayOf = (m: Measure): string => {
  switch (m.kind) {
    case 'gait-speed':
      return [m.kind, m.metres, m.pace, m.start, m.turn, m.support].join();
    case 'six-minute-walk':
    case 'up-and-go':
      return [m.kind, m.support].join();
    case 'chair-stands':
    case 'five-rises':
      return [m.kind, m.usedArms].join();
  }
};

/** @param earlier measures before `now`, newest first; other kinds among them do not count */
export function changeSince(now: Measure, earlier: readonly Measure[], limits: WalkingLimits): Change | null {
  const ofKind = earlier.filter((m) => m.kind === now.kind);
  if (ofKind.length === 0) return null;
  const before = ofKind.find((m) => wayOf(m) === wayOf(now));
  if (!before) return { says: 'Not compared with the one before: done in another way.', source: null };
  if (now.kind === 'gait-speed' && before.kind === 'gait-speed') {
    return speedChange(speedOf(now), speedOf(before), now.pace, limits);
  }
  const [is, was, unit, more, less] = amounts(now, before);
  if (is === null || was === null) {
    const says = is === was ? 'Not managed the time before either.' : managed(is !== null);
    return { says, source: null };
  }
  const by = rounded(is - was);
  const says = by === 0 ? 'The same as' : `${Math.abs(by)}${unit} ${by > 0 ? more : less} than`;
  return { says: `${says} the time before.`, source: null };
}

const managed = (now: boolean): string =>
  now ? 'Not managed the time before.' : 'Managed the time before, not this time.';

type Amounts = readonly [is: number | null, was: number | null, unit: string, more: string, less: string];
function amounts(now: Measure, before: Measure): Amounts {
  if (now.kind === 'six-minute-walk' && before.kind === now.kind) {
    return [now.metres, before.metres, ' m', 'more', 'less'];
  }
  if (now.kind === 'chair-stands' && before.kind === now.kind) {
    return [now.stands, before.stands, '', 'more', 'fewer'];
  }
  return [secondsOf(now), secondsOf(before), ' s', 'slower', 'quicker'];
}
const secondsOf = (m: Measure): number | null =>
  m.kind === 'five-rises' || m.kind === 'up-and-go' ? m.seconds : null;

function speedChange(is: number, was: number, pace: 'usual' | 'fast', limits: WalkingLimits): Change {
  // In hundredths, so that a change of exactly 0.05 is one.
  const by = Math.round(is * 100) - Math.round(was * 100);
  const size = Math.abs(by) / 100;
  const { smallChange, substantialChange } = limits;
  const says =
    by === 0
      ? 'As fast as the time before'
      : `${size.toFixed(2)} m/s ${by > 0 ? 'faster' : 'slower'} than the time before`;
  if (pace === 'fast') return { says: `${says}.`, source: null };
  if (size >= substantialChange.value) {
    return {
      says: `${says}: a substantial change (${substantialChange.value} or more).`,
      source: substantialChange.source,
    };
  }
  const meant = size >= smallChange.value;
  return {
    says: `${says}: ${meant ? 'a small change that counts' : 'less than a change that counts'} (${smallChange.value} or more).`,
    source: smallChange.source,
  };
}

const rounded = (n: number): number => Math.round(n * 10) / 10;
