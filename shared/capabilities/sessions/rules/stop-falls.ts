/** Falls of the systolic pressure in a session, against the ward's limits. Sources: those that the limits carry. */
import { toEpoch } from '../../../kernel/times.ts';
import type { Reading } from '../../assessments/values.ts';
import type { StopReason, StopRules } from './stop-lines.ts';

const POSTURES = ['lying', 'seated', 'standing'] as const;
type Pressure = Extract<Reading, { kind: 'pressure' }>;
const pressures = (readings: readonly Reading[]): Pressure[] =>
  readings
    .filter((r): r is Pressure => r.kind === 'pressure')
    .toSorted((a, b) => toEpoch(a.at) - toEpoch(b.at));

/** The last one before it in its posture; of two of one instant the higher. */
function beforeInPosture(taken: readonly Pressure[], { at, posture }: Pressure): Pressure | undefined {
  const earlier = taken.filter((r) => r.posture === posture && toEpoch(r.at) < toEpoch(at));
  return earlier.toSorted((a, b) => toEpoch(a.at) - toEpoch(b.at) || a.systolic - b.systolic).at(-1);
}

/**
 * The systolic pressure against the last one before the session, or the first one of it; and against
 * the reading before it in the same posture, so that neither a lower one at rest nor the limit for
 * rising hides a fall. Standing up by itself lowers it, so after a change to a higher posture that
 * limit applies. Where both fell too far the greater fall is said.
 */
export function fallsOf({
  before,
  readings,
  rules,
}: {
  /** Taken before the session began, in any order. */
  readonly before: readonly Reading[];
  /** Taken since, in any order. */
  readonly readings: readonly Reading[];
  readonly rules: StopRules;
}): StopReason[] {
  const earlier = pressures(before);
  const since = pressures(readings);
  const base = earlier.at(-1) ?? since[0];
  if (!base) return [];
  const all = [...earlier, ...since];
  return since.flatMap((reading) => {
    const last = beforeInPosture(all, reading);
    return [base, ...(last ? [last] : [])]
      .flatMap((from) => fallen(from, reading, rules))
      .toSorted((a, b) => b.fall - a.fall)
      .slice(0, 1)
      .map(({ reason }) => reason);
  });
}

function fallen(from: Pressure, to: Pressure, rules: StopRules): { fall: number; reason: StopReason }[] {
  const fall = from.systolic - to.systolic;
  const rose = POSTURES.indexOf(to.posture) > POSTURES.indexOf(from.posture);
  const { value, source } = rose ? rules.rising.systolicFall : rules.stop.systolicFallWithEffort;
  if (rose ? fall < value : fall <= value) return [];
  const words = rose
    ? `systolic fell by ${fall} mmHg on rising (${from.systolic} to ${to.systolic}), ${value} or more`
    : `systolic fell by ${fall} mmHg with effort (${from.systolic} to ${to.systolic}), more than ${value}`;
  return [{ fall, reason: { words, limit: value, source, takenAt: toEpoch(to.at) } }];
}
