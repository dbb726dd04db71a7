/**
 * Blood pressure on rising. Says which rule fired on which readings, the worst fall and when; a
 * reading that is missing is named, never filled in. Not a diagnosis: the clinician decides.
 *
 * Falls from lying: Freeman et al. 2011 (classic, initial, delayed). From seated: Shaw et al. 2017.
 * A rise: Jordan et al. 2022. A fall at either minute counts: CDC, Measuring
 * Orthostatic Blood Pressure, 2017. The numbers, each with
 * its source, are the ward's.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import { followsFrom } from './pressure-follows.ts';
import {
  isInitial,
  missingReadings,
  pressuresOf,
  sayMinute,
  sayReading,
  standingOf,
} from './pressure-series.ts';
import type { RisingReading } from './pressure-series.ts';
import type { RisingFired, RisingInput, RisingRule, RisingVerdict } from './rising-verdict.ts';

export { missingReadings, type RisingReading };
export type * from './rising-verdict.ts';

/**
 * The readings at rest that one standing up is measured from: the last before the very first
 * standing and the last before this one. The higher of them counts, so that a rest in which the
 * pressure has not come back hides no fall.
 */
function atRest(
  taken: readonly RisingReading[],
  posture: 'lying' | 'seated',
  firstUp: EpochMs,
  up: EpochMs,
): readonly RisingReading[] {
  const all = taken.filter((r) => r.posture === posture);
  const before = [all.findLast((r) => r.at <= firstUp), all.findLast((r) => r.at <= up)].filter(
    (r) => r !== undefined,
  );
  if (before.length > 0) return before;
  // Written down after the standing ones: better than none, but only when it is all there is.
  const only = posture === 'lying' || !taken.some((r) => r.posture === 'lying') ? all[0] : undefined;
  return only ? [only] : [];
}

const highest = (
  rest: readonly RisingReading[],
  of: (r: RisingReading) => number,
): RisingReading | undefined => rest.toSorted((a, b) => of(b) - of(a))[0];
const WHAT = ['systolic', 'diastolic'] as const;

/** The falls of one standing reading that reach their limits. */
function fallsAt(
  to: RisingReading,
  rest: Readonly<Record<'lying' | 'seated', readonly RisingReading[]>>,
  { rules, set }: RisingInput,
): RisingFired[] {
  const initial = isInitial(to, rules);
  const later = to.minute !== null && to.minute > rules.classicWithinMinutes.value + set.within;
  const limits = {
    lying: { systolic: rules.systolicFall, diastolic: rules.diastolicFall },
    seated: { systolic: rules.seatedSystolicFall, diastolic: rules.seatedDiastolicFall },
    // The source says "more than" for the initial fall; at the limit itself the stricter reading is taken.
    initial: { systolic: rules.initialSystolicFall, diastolic: rules.initialDiastolicFall },
  };
  const out: RisingFired[] = [];
  for (const posture of ['lying', 'seated'] as const) {
    for (const what of WHAT) {
      const from = highest(rest[posture], (r) => r[what]);
      if (!from) continue;
      const rule: RisingRule = initial
        ? 'initial-fall'
        : later
          ? 'later-fall'
          : posture === 'lying'
            ? `${what}-fall`
            : `seated-${what}-fall`;
      const fired = fallen(rule, what, from, to, limits[initial ? 'initial' : posture][what]);
      if (fired) out.push(fired);
    }
  }
  return out;
}

function fallen(
  rule: RisingRule,
  what: 'systolic' | 'diastolic',
  from: RisingReading,
  to: RisingReading,
  limit: { readonly value: number; readonly source: string },
): RisingFired | null {
  const by = from[what] - to[what];
  if (by < limit.value) return null;
  return {
    rule,
    what,
    by,
    limit: limit.value,
    source: limit.source,
    minute: to.posture === 'standing' ? to.minute : null,
    from,
    to,
    words: `${what} fell ${by}: from ${sayReading(from)} to ${sayReading(to)} (limit ${limit.value})`,
  };
}

/** A fall already on sitting up, before the first standing, by the limits from lying. Common practice, no source. */
function fallsOnSitting(taken: readonly RisingReading[], firstUp: EpochMs, rules: RisingInput['rules']) {
  const out: RisingFired[] = [];
  const limits = { systolic: rules.systolicFall, diastolic: rules.diastolicFall };
  for (const to of taken) {
    if (to.posture !== 'seated' || to.at > firstUp) continue;
    const from = taken.findLast((r) => r.posture === 'lying' && r.at <= to.at);
    if (!from) continue;
    for (const what of WHAT) {
      const fired = fallen('fall-on-sitting', what, from, to, limits[what]);
      if (fired) out.push({ ...fired, source: `common practice; the limit: ${fired.source}` });
    }
  }
  return out;
}

export function judgeRising(input: RisingInput): RisingVerdict {
  const { rules, set, demanded } = input;
  const taken = pressuresOf(input.readings);
  const standing = standingOf(taken);
  const firstUp = standing[0]?.at ?? Number.POSITIVE_INFINITY;
  const missing = missingReadings(input.readings, set, rules);
  const fired = fallsOnSitting(taken, firstUp, rules);
  const worst = { systolicFall: 0, systolicMinute: null, diastolicFall: 0, diastolicMinute: null } as {
    systolicFall: number;
    systolicMinute: number | null;
    diastolicFall: number;
    diastolicMinute: number | null;
  };
  const limitLow = rules.standingSystolicBelow.value;
  let measured = false;
  let fallPastInitial = 0;
  let lyingSystolic: number | null = null;
  let rate: RisingVerdict['heartRateRise'] = null;
  let rise: RisingVerdict['pressureRise'] = null;
  let low: RisingVerdict['standingLow'] = null;
  for (const r of standing) {
    const { minute, systolic } = r;
    if (systolic < limitLow && (!low || systolic < low.systolic)) {
      const words = `systolic ${systolic} at ${sayMinute(minute)} (limit ${limitLow})`;
      low = { systolic, minute, limit: limitLow, words };
    }
    const up = standing.find((s) => s.series === r.series)!.at;
    const rest = {
      lying: atRest(taken, 'lying', firstUp, up),
      seated: atRest(taken, 'seated', firstUp, up),
    };
    const both = [...rest.lying, ...rest.seated];
    const first = both[0];
    if (!first) continue;
    measured = true;
    fired.push(...fallsAt(r, rest, input));

    const fall = highest(both, (x) => x.systolic)!.systolic - systolic;
    if (fall > worst.systolicFall) Object.assign(worst, { systolicFall: fall, systolicMinute: minute });
    const below = highest(both, (x) => x.diastolic)!.diastolic - r.diastolic;
    if (below > worst.diastolicFall) Object.assign(worst, { diastolicFall: below, diastolicMinute: minute });
    const lyingThen = highest(rest.lying, (x) => x.systolic)?.systolic;
    if (lyingThen !== undefined) {
      lyingSystolic = Math.max(lyingSystolic ?? 0, lyingThen);
      if (!isInitial(r, rules)) fallPastInitial = Math.max(fallPastInitial, lyingThen - systolic);
    }
    for (const { heartRate } of both) {
      if (heartRate === null || r.heartRate === null) continue;
      const by = r.heartRate - heartRate;
      if (by < rules.heartRateRise.value || (rate && by <= rate.by)) continue;
      rate = { by, minute, words: `heart rate rose ${by}, to ${r.heartRate} at ${sayMinute(minute)}` };
    }
    const risen = systolic - first.systolic;
    if (risen >= rules.systolicRise.value && (!rise || risen > rise.by)) {
      const high = systolic >= rules.standingHighFrom.value;
      const words = `systolic rose ${risen} on standing, to ${systolic}${high ? ', high' : ''}`;
      rise = { by: risen, standingSystolic: systolic, words };
    }
  }

  const highLimit = rules.systolicFallWhenLyingHigh.value;
  const reached = fallPastInitial >= highLimit;
  const lyingHigh =
    lyingSystolic !== null && lyingSystolic >= rules.lyingHighFrom.value
      ? {
          lyingSystolic,
          limit: highLimit,
          reached,
          words: `lying systolic is high (${lyingSystolic}): by the limit of ${highLimit} this is ${reached ? '' : 'not '}a fall`,
        }
      : null;

  const symptoms = input.symptoms ?? [];
  const standNotCleared = [
    ...(symptoms.length
      ? [`symptoms on rising (${symptoms.map((s) => s.replaceAll('-', ' ')).join(', ')})`]
      : []),
    ...(low ? [low.words] : []),
    ...(demanded && missing.length ? [`the pressure set is incomplete: ${missing.join(', ')} missing`] : []),
    ...(demanded && input.symptoms === undefined ? ['symptoms on rising were not asked'] : []),
  ];
  const verdict = {
    fall: fired.length ? 'yes' : demanded && missing.length ? 'incomplete' : measured ? 'no' : 'not-taken',
    complete: missing.length === 0,
    missing,
    readings: taken,
    fired,
    worst: measured ? worst : null,
    passing: passingWords(fired, standing),
    lyingHigh,
    heartRateRise: rate,
    pressureRise: rise,
    standingLow: low,
    symptoms,
    standNotCleared,
  } as const;
  return { ...verdict, follows: followsFrom(verdict, input) };
}

/** The 2011 consensus asks for a sustained fall, the CDC leaflet takes one at either reading: both are said. */
function passingWords(fired: readonly RisingFired[], standing: readonly RisingReading[]): string | null {
  const fell = fired.filter((f) => f.to.series > 0 && f.rule !== 'initial-fall').map((f) => f.to);
  const last = fell.at(-1);
  const back = last && standing.find((r) => r.series === last.series && r.at > last.at);
  return back
    ? `the fall was gone at ${sayMinute(back.minute)}; a fall at any reading counts here (CDC 2017), the 2011 consensus asks for one that lasts`
    : null;
}
