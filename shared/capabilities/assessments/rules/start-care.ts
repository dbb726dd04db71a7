/**
 * For "may we start", where the ward turned them on: what was taken of the critical-care signs, each
 * by itself, and the early-warning score. Limits and sources stand in the ward's rules.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { CriticalCareSigns, EarlyWarning } from '../values.ts';
import { judgedOf, weightOf, type CountingInput, type Found, type StartWhy, type Taken } from './counting.ts';
import {
  CARE_SIGNS,
  CARE_SIGNS_ASKED,
  careSignOf,
  isWholeSet,
  judgeCriticalCare,
  vasoactiveSettles,
  type TakenCare,
} from './critical-care.ts';
import { isScore } from './early-warning.ts';

/** The published set for critical care: each sign by itself, and what bars moving at all. */
export function judgeCare(input: CountingInput, found: Found): void {
  const { facts, t, rules, note } = input;
  const limits = rules.criticalCare;
  if (!limits.on.value) return;
  const entries = facts.filter(isCare);
  const say = (taken: TakenCare) => {
    for (const reason of judgeCriticalCare(taken.signs, limits, t - taken.at)) {
      found.reasons.push({ ...reason, takenAt: taken.at, facts: [taken.fact.id] });
    }
  };
  for (const sign of CARE_SIGNS) {
    const all = entries.map((fact) => careSignOf(fact, sign)).filter((one) => one !== null);
    const taken = sign === 'mean pressure' ? withTarget(all) : all;
    if (sign === 'vasoactive drugs') for (const { at } of taken) note(vasoactiveSettles(at, limits));
    const weigh = ({ signs, at }: TakenCare) => weightOf(judgeCriticalCare(signs, limits, t - at));
    const asked = CARE_SIGNS_ASKED.includes(sign);
    const named = { name: `critical care: ${sign}`, hours: rules.start.readingHours.value, asked };
    const counts = judgedOf(taken, weigh, named, input, found);
    if (counts) say(counts);
  }
  // A bar stands until a whole set without it: what an entry does not name is not said to be gone.
  const bars = new Map<string, TakenCare>();
  for (const fact of entries) {
    if (isQualified(fact.author) && isWholeSet(fact)) {
      for (const [bar, { at }] of bars) if (at < fact.occurred) bars.delete(bar);
    }
    for (const bar of fact.data.bars) bars.set(bar, { at: fact.occurred, fact, signs: { bars: [bar] } });
  }
  for (const bar of bars.values()) say(bar);
}

/** A lower target, once ordered, goes on for the readings after it that do not repeat it. */
function withTarget(taken: readonly TakenCare[]): TakenCare[] {
  let target: number | undefined;
  return taken.map((one) => {
    const own = one.signs.meanPressureTarget;
    if (own !== undefined && isQualified(one.fact.author)) target = own;
    const counts = own ?? target;
    return counts === undefined ? one : { ...one, signs: { ...one.signs, meanPressureTarget: counts } };
  });
}

const isCare = (fact: Fact): fact is Fact<CriticalCareSigns> => fact.type === 'critical-care-signs-recorded';

interface TakenScore extends Taken {
  readonly score: EarlyWarning;
}
/** An emergency review is not now, an urgent one asks first. Source: the score's own bands. */
export function judgeScore(input: CountingInput, found: Found): void {
  const { facts, rules } = input;
  const { on, emergencyFrom, totalFrom, anyThree, hours } = rules.earlyWarning;
  if (!on.value) return;
  const judge = ({ score: s, at, fact }: TakenScore): StartWhy[] => {
    const say = (word: StartWhy['word'], words: string, limit: number, source: string): StartWhy[] => [
      { word, words: `early-warning score ${s.score}${words}`, limit, source, takenAt: at, facts: [fact.id] },
    ];
    for (const from of [emergencyFrom, totalFrom]) {
      if (s.score < from.value) continue;
      const word = from === emergencyFrom ? 'not-now' : 'ask-first';
      return say(word, ` is ${from.value} or more`, from.value, from.source);
    }
    return s.anyThree && anyThree.value
      ? say('ask-first', ' with one parameter at 3', 3, anyThree.source)
      : [];
  };
  const all = facts.filter(isScore).map((fact) => ({ at: fact.occurred, fact, score: fact.data }));
  const named = { name: 'early-warning score', hours: hours.value };
  const counts = judgedOf(all, (one) => weightOf(judge(one)), named, input, found);
  if (counts) found.reasons.push(...judge(counts));
}
