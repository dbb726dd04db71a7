/** Facts for tests of the rules: times are hours after a fixed morning on an invented ward. */
import type { Author, Role } from '../../../kernel/author.ts';
import type { EventId, StaffId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { HOUR, toIso } from '../../../kernel/times.ts';
import { EVENT_TYPES } from '../../registry.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { assessmentRecorded } from '../events.ts';
import type { Finding, Side, StageRecord } from '../values.ts';
import type { Assessment } from './judge-stage.ts';
import { DEFAULT_PROTOCOL, protocolLookup } from './protocol.ts';
import type { TierInput } from './tier.ts';

export const MORNING: EpochMs = Date.UTC(2026, 2, 3, 8, 0);
export const hours = (h: number): EpochMs => MORNING + h * HOUR;
export const by = (role: Role): Author => ({ staff: `staff-${role}` as StaffId, role });

/** Ward days from 07:00 to 07:00 UTC, nights from 21:00. */
export const calendar: WardCalendar = {
  zone: 'UTC',
  wardDay: (at) => {
    const day = 24 * HOUR;
    const from = Math.floor((at - 7 * HOUR) / day) * day + 7 * HOUR;
    return { from, to: from + day };
  },
  night: (at) => {
    const { from, to } = calendar.wardDay(at);
    const night = from + 14 * HOUR;
    return at < night ? { is: false, until: night } : { is: true, until: to };
  },
  /** Shifts from 07:00 and 19:00. */
  shift: (at) => {
    const { from, to } = calendar.wardDay(at);
    const late = from + 12 * HOUR;
    return at < late ? { from, to: late } : { from: late, to };
  },
};

let serial = 0;
export function fact<Data>(
  type: string,
  data: Data,
  { at = 0, role = 'nurse' as Role, id = '', precision = 'exact' as Fact['precision'] } = {},
): Fact<Data> {
  serial += 1;
  const event = EVENT_TYPES.get(type)!;
  event.schema.parse(data);
  return {
    id: (id || `e${serial}`) as EventId,
    type,
    data,
    occurred: hours(at),
    precision,
    recorded: hours(at) + 60_000,
    position: serial,
    author: by(role),
    source: { kind: 'person' },
    rank: event.rank(data as never),
    correctedBy: null,
  };
}

export type StageSays = Partial<Omit<StageRecord, 'stage'>>;

/** Every part of a stage, met on each side. */
export const allMet = (stage: string): Finding[] =>
  DEFAULT_PROTOCOL.stages
    .find((s) => s.id === stage)!
    .parts.flatMap((p): Finding[] =>
      p.sided
        ? (['left', 'right'] as Side[]).map((side) => ({ part: p.id, side, result: 'met' }))
        : [{ part: p.id, result: 'met' }],
    );

export const record = (stage: string, at: number, says: StageSays = {}): StageRecord => ({
  stage,
  outcome: 'met',
  how: 'free',
  people: 0,
  findings: says.outcome && says.outcome !== 'met' ? [] : allMet(stage),
  symptom: false,
  at: toIso(hours(at)),
  ...says,
});

/** An assessment of the named stages, all met and free unless said otherwise. */
export function assessment(
  stages: Record<string, StageSays>,
  options: { at?: number; role?: Role; id?: string; precision?: Fact['precision'] } = {},
  extra: Partial<Assessment> = {},
): Fact<Assessment> {
  return fact(
    assessmentRecorded.name,
    {
      protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
      depth: 'full' as const,
      stages: Object.entries(stages).map(([stage, says]) => record(stage, options.at ?? 0, says)),
      readings: [],
      cooperation: { waitsForHelp: 'yes' as const, followsInstructions: 'yes' as const },
      wears: [],
      answers: [],
      firstTimeUp: false,
      ...extra,
    },
    options,
  );
}

/** Stages up to and with the named one. */
export const upTo = (last: string, says: Record<string, StageSays> = {}): Record<string, StageSays> => {
  const out: Record<string, StageSays> = {};
  for (const s of DEFAULT_PROTOCOL.stages) {
    out[s.id] = says[s.id] ?? {};
    if (s.id === last) break;
  }
  return out;
};
export const notMet = (...parts: string[]): StageSays => ({
  outcome: 'not-met',
  findings: parts.map((p): Finding => {
    const [part, side] = p.split('/');
    return { part: part!, ...(side ? { side: side as Side } : {}), result: 'not-met' };
  }),
});

export const tierInput = (facts: readonly Fact[], at = 100): TierInput => ({
  facts: facts.toSorted(
    (a, b) => a.occurred - b.occurred || a.rank - b.rank || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  ),
  t: hours(at),
  calendar,
  rules: DEFAULT_RULES,
  protocols: protocolLookup([]),
});
