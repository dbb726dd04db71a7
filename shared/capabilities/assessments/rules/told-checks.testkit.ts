/** Checks of invented people, and what they say told whole: tier, every stage as it stands, parts, disputes. */
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Finding, Side } from '../values.ts';
import { securedWith } from '../values.ts';
import { allMet, assessment, hours, tierInput, upTo, type StageSays } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { protocolLookup, type Protocol } from './protocol.ts';
import { judgeTier, tierWords } from './tier.ts';

export type Says = Record<string, StageSays>;
export type When = Parameters<typeof assessment>[1];
export const seen = (last: string, says: Says = {}, when: When = {}, extra: object = {}) =>
  assessment(upTo(last, says), when, extra);

const minutesAt = (t: number) => `${Math.round((t - hours(0)) / 6_000) / 10} min`;
/** The tier and each stage in short; with parts, help and start too where one check is asked about alone. */
export function told(facts: readonly Fact[], whole: boolean, own: readonly Protocol[] = []) {
  const input = { ...tierInput(facts), protocols: protocolLookup(own as never) };
  const { view, cleared, clearedFree, conflicts, everWalked, pressureDrop, seen: s } = judgeTier(input);
  return {
    tier: `${view.word}, notch ${view.notch}, ${view.protocol?.id ?? 'no protocol'}, ${view.oneLeg ?? 'both legs'}${view.secured ? ', secured' : ''}, at ${view.at === null ? 'no time' : minutesAt(view.at)} by ${view.by?.role ?? 'nobody'}`,
    because: view.because,
    cleared: [...cleared],
    free: [...clearedFree],
    stages: [...s.stages].map(
      ([key, is]) =>
        `${key} ${is.outcome} ${is.how} ${is.securedWith ?? ''} ${is.people} ${is.oneLeg ?? ''} at ${minutesAt(is.at)} by ${is.fact.id}: ${is.reasons.join('; ')}`,
    ),
    walked: everWalked,
    drop: pressureDrop?.fact ?? 'none',
    lacks: [...s.parts].filter(([, p]) => !p.met).map(([key, p]) => `${key} by ${p.fact.id}`),
    conflicts,
    remarks: s.remarks.map(({ rule, fact: of, words }) => `${rule} [${of.id}] ${words}`),
    words: [...tierWords(input)].map(([of, word]) => `${of} ${word}`),
    ...(whole
      ? {
          parts: [...s.parts].map(([key, p]) => `${key} ${p.met ? 'met' : 'not'} by ${p.fact.id}`),
          helps: s.cooperation.map(
            (c) => `waits ${c.value.waitsForHelp}, follows ${c.value.followsInstructions}, by ${c.fact}`,
          ),
          start: s.start
            ? `${s.start.verdict.word} by ${s.start.fact.id}, looked at ${s.start.verdict.lookedAt.map((l) => l.words).join(', ')}; not taken ${s.start.verdict.notTaken.join(', ')}`
            : 'not looked at',
        }
      : {}),
  };
}
export const asked = (title: string, facts: () => readonly Fact[], own?: readonly Protocol[]) =>
  [title, () => told(facts(), true, own)] as const;
export const short = (title: string, facts: () => readonly Fact[]) =>
  [title, () => told(facts(), false)] as const;

export const STAGES = DEFAULT_PROTOCOL.stages.map((s) => s.id);
export const oneLeg = (leg: Side): Says => ({
  stand: {
    findings: allMet('stand').map((f): Finding =>
      f.part === 'leg-bears' && f.side !== leg ? { ...f, result: 'not-applicable', reason: 'cast' } : f,
    ),
  },
});
export const withPart = (stage: string, part: string, result: Finding['result'], side?: Side): Says => ({
  [stage]: {
    findings: allMet(stage).map((f) =>
      f.part === part && (side === undefined || f.side === side)
        ? ({
            ...f,
            result,
            ...(result === 'met' || result === 'not-met'
              ? {}
              : { reason: result === 'not-tested' ? 'pain' : 'cast' }),
          } as Finding)
        : f,
    ),
  },
});
export const secured = (stage: string, by: (typeof securedWith.options)[number], people = 2): Says => ({
  [stage]: { how: 'secured', securedWith: by, people },
});

export function set(at: number, one: number, three: number | null, symptoms: readonly string[] = []) {
  const pressure = (posture: string, minute: number, systolic: number) => ({
    kind: 'pressure',
    posture,
    minute,
    systolic,
    diastolic: 70,
    at: toIso(Date.UTC(2026, 2, 3, 8) + (at * 60 + minute + (posture === 'lying' ? 0 : 10)) * 60_000),
  });
  return {
    depth: 'full-with-pressure' as const,
    risingSymptoms: symptoms as never,
    readings: [
      pressure('lying', 5, 130),
      pressure('standing', 1, one),
      ...(three === null ? [] : [pressure('standing', 3, three)]),
    ] as never,
  };
}
export function fell(at: number) {
  return set(at, 105, 106);
}
