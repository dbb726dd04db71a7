/**
 * The readings, for "may we start": of each sign the one that counts, against the ward's limits. A
 * reading that is too old is asked for again and never taken as of now. Readings in a session, pain
 * before and after it, and the signs of critical care are readings like those of a check.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, toEpoch, toIso, type EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import type { assessmentRecorded } from '../events.ts';
import type { CriticalCareSigns, Reading } from '../values.ts';
import { judgedOf, stillStands, weightOf, type CountingInput, type Found, type Taken } from './counting.ts';
import { asReadings } from './critical-care.ts';
import { heartRateWith, judgeReading, moreOxygen, SIGN_OF, type StartLimits } from './may-start.ts';

interface SignsInput extends CountingInput {
  readonly oxygenTarget: StartLimits['oxygenTarget'];
  /** The order that gave the target. */
  readonly targetFact: EventId | null;
}
interface TakenReading<R extends Reading = Reading> extends Taken {
  readonly reading: R;
}
type Of<K extends Reading['kind']> = TakenReading<Extract<Reading, { kind: K }>>;
type ByKind = { readonly [K in Reading['kind']]: Of<K>[] };

/** Facts up to `t`, in order. */
export function judgeSigns(input: SignsInput, found: Found): void {
  const { rules, oxygenTarget, targetFact } = input;
  const taken = takenReadings(input);
  const judge = ({ reading }: TakenReading) =>
    judgeReading(reading, { rules: rules.start, oxygenTarget }).reasons;
  for (const kind of Object.keys(SIGN_OF) as Reading['kind'][]) {
    const ofKind: readonly TakenReading[] = taken[kind];
    // A standing pressure is none at rest.
    const all = kind === 'pressure' ? ofKind.filter(({ reading }) => !isStanding(reading)) : ofKind;
    const sign = { name: SIGN_OF[kind], hours: rules.start.readingHours.value };
    const counts = judgedOf(all, (one) => weightOf(judge(one)), sign, input, found);
    if (!counts) continue;
    const target = kind === 'oxygen' && targetFact ? [targetFact] : [];
    for (const { sign: _sign, ...reason } of judge(counts)) {
      found.reasons.push({ ...reason, facts: [counts.fact.id, ...target] });
    }
  }
  lowOnStanding(taken.pressure, input, found);
  oxygenFlow(taken.oxygen, input, found);
}

const isStanding = (reading: Reading): boolean =>
  reading.kind === 'pressure' && reading.posture === 'standing';

/**
 * A session whose last pressure was low on standing: not now, until somebody qualified has taken one that
 * is not, in any posture. In a check that belongs to rising. Common practice, no source.
 */
function lowOnStanding(taken: readonly Of<'pressure'>[], input: SignsInput, found: Found): void {
  const { value, source } = input.rules.rising.standingSystolicBelow;
  let answered = -Infinity;
  const low: (Taken & { readonly systolic: number })[] = [];
  for (const { reading, at, fact } of taken) {
    const { systolic } = reading;
    if (!isStanding(reading) || systolic >= value) {
      if (isQualified(fact.author)) answered = Math.max(answered, at);
    } else if (fact.type === 'session-recorded') low.push({ at, fact, systolic });
  }
  const [last] = low
    .filter((r) => r.at >= answered)
    .toSorted((a, b) => b.at - a.at || a.systolic - b.systolic);
  if (!last) return;
  const until = last.at + input.rules.start.readingHours.value * HOUR;
  if (until > input.t) input.note(until);
  else if (!stillStands(last.at, input)) return;
  found.reasons.push({
    word: 'not-now',
    words: `low on standing: systolic ${last.systolic} mmHg is below ${value}; take it again at rest`,
    limit: value,
    source,
    takenAt: last.at,
    facts: [last.fact.id],
  });
}

/**
 * More oxygen than at the entry before: against the last one of a qualified author, or a lower one since.
 * Where there is none of a qualified author, but a saturation before it without a flow, it may be more.
 */
function oxygenFlow(taken: readonly Of<'oxygen'>[], input: SignsInput, found: Found): void {
  const flows: { flow: number; at: EpochMs; fact: Fact; qualified: boolean }[] = [];
  const silent: Of<'oxygen'>[] = [];
  for (const one of taken) {
    const { reading, at, fact } = one;
    if (reading.litresPerMinute === undefined) silent.push(one);
    else flows.push({ flow: reading.litresPerMinute, at, fact, qualified: isQualified(fact.author) });
  }
  const lastBy = (before: EpochMs, but: Fact | null): EpochMs =>
    flows.reduce(
      (last, f) => (f.qualified && f.fact !== but && f.at < before && f.at > last ? f.at : last),
      -Infinity,
    );
  const since = lastBy(Infinity, null);
  let unknown: { now: (typeof flows)[number]; before: Fact } | null = null;
  let most: { reasons: ReturnType<typeof moreOxygen>; facts: EventId[]; rise: number } | null = null;
  for (const now of flows) {
    if (now.at < since) continue;
    const until = now.at + input.rules.start.readingHours.value * HOUR;
    if (until > input.t) input.note(until);
    else if (!stillStands(now.at, input)) continue;
    const from = lastBy(now.at, now.fact);
    const before = flows.filter((f) => f.fact !== now.fact && f.at >= from && f.at < now.at);
    const said = from === -Infinity ? silent.findLast((s) => s.fact !== now.fact && s.at < now.at) : null;
    if (said && now.flow > (unknown?.now.flow ?? 0)) unknown = { now, before: said.fact };
    if (before.length === 0) continue;
    const lowest = before.reduce((low, f) => (f.flow < low.flow ? f : low));
    const rise = now.flow - lowest.flow;
    const reasons = moreOxygen(lowest.flow, now.flow, now.at);
    if (reasons.length > 0 && rise > (most?.rise ?? 0)) {
      most = { reasons, facts: [now.fact.id, lowest.fact.id], rise };
    }
  }
  if (!most && unknown) {
    const { now, before } = unknown;
    const reasons = moreOxygen('not-recorded', now.flow, now.at);
    most = { reasons, facts: [now.fact.id, before.id], rise: now.flow };
  }
  for (const { sign: _sign, ...reason } of most?.reasons ?? []) {
    found.reasons.push({ ...reason, facts: most!.facts });
  }
}

const CARE = 'critical-care-signs-recorded';
/** By kind, each in the order of the facts. */
function takenReadings({ facts, t, rules, note }: CountingInput): ByKind {
  const care = rules.criticalCare.on.value;
  const taken: ByKind = {
    'heart-rate': [],
    pressure: [],
    oxygen: [],
    breathing: [],
    temperature: [],
    pain: [],
  };
  for (const fact of facts) {
    for (const { reading, at } of readingsOf(fact, care)) {
      if (at > t) note(at);
      else (taken[reading.kind] as TakenReading[]).push({ reading, at, fact });
    }
  }
  return taken;
}

interface Parsed {
  readonly reading: Reading;
  readonly at: EpochMs;
}
const NONE: readonly Parsed[] = [];
/** Parsed once for each entry: a board asks again at every view. */
const parsed = new WeakMap<object, readonly Parsed[]>();

function readingsOf(fact: Fact, care: boolean): readonly Parsed[] {
  if (fact.type === CARE && care) {
    const readings = asReadings(fact as Fact<CriticalCareSigns>, toIso(fact.occurred));
    return readings.map((reading) => ({ reading, at: fact.occurred }));
  }
  if (fact.type !== 'assessment-recorded' && fact.type !== 'session-recorded') return NONE;
  const data = fact.data as object;
  let readings = parsed.get(data);
  if (!readings) {
    readings = writtenIn(fact)
      .flatMap((r): Reading[] => {
        // A heart rate taken with a standing pressure belongs to rising, not to starting.
        const rate = r.kind === 'pressure' && !isStanding(r) ? heartRateWith(r) : undefined;
        return rate ? [r, rate] : [r];
      })
      .map((reading) => ({ reading, at: toEpoch(reading.at) }));
    parsed.set(data, readings);
  }
  return readings;
}

function writtenIn(fact: Fact): readonly Reading[] {
  if (fact.type === 'assessment-recorded') {
    return (fact.data as PayloadOf<typeof assessmentRecorded>).readings;
  }
  const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
  const readings = [...(session.readings ?? [])];
  const pain = (outOfTen: number | undefined, at: string) => {
    if (outOfTen !== undefined) readings.push({ kind: 'pain', outOfTen, at });
  };
  pain(session.painBefore, session.startedAt);
  pain(session.painAfter, session.endedAt ?? session.startedAt);
  return readings;
}
