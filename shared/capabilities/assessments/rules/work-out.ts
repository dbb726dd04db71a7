/**
 * What one assessment says by itself: each stage judged, its parts, its pressures. It depends on the
 * assessment, its protocol, the ward's rules and the orders of that time alone, so it is worked out
 * once for an assessment and kept as long as that is: a board asks again at every view.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import { toEpoch, toIso } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Side, StageRecord } from '../values.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import type { Assessment, JudgedStage } from './judge-stage.ts';
import { findingsOf, judgeStage } from './judge-stage.ts';
import type { OxygenFlowBefore, StartVerdict } from './may-start.ts';
import { judgeStart, readingsAtStart } from './may-start.ts';
import type { RisingVerdict } from './pressure.ts';
import { judgeRising } from './pressure.ts';
import type { PartMeaning, Protocol, ProtocolStage } from './protocol.ts';

export interface JudgedRecord {
  /** Place of the stage in the protocol; after its last one for a Stand that it does not have. */
  readonly index: number;
  readonly stage: ProtocolStage;
  readonly record: StageRecord;
  /** When the record says it was done. */
  readonly at: EpochMs;
  readonly judged: JudgedStage;
}

export interface WorkedOut {
  /**
   * In the order of the records; records of stages the protocol does not know are left out. Last a Stand that nobody
   * wrote down, when the person rose and what was found then stands against it; in a document without one, beyond its own.
   */
  readonly judged: readonly JudgedRecord[];
  /** By part key: met in every finding of it; a part not tested is not in it. */
  readonly said: ReadonlyMap<string, boolean>;
  readonly rising: RisingVerdict | null;
  /** Null when the check has no record of the stage "may we start". */
  readonly start: StartVerdict | null;
}

export interface AtThatTime {
  readonly protocol: Protocol;
  readonly rules: RulesDocument;
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  readonly oxygenFlowBefore: OxygenFlowBefore;
  readonly mayNotBear: ReadonlySet<Side>;
  readonly mayNotPush: ReadonlySet<Side>;
  /** Whether each arm was seen to push before this check; null when it was never tested. */
  readonly armsPushed: Readonly<Record<Side, boolean | null>>;
}

export const partKey = (shows: PartMeaning, side?: Side): string => (side ? `${shows}/${side}` : shows);

interface Kept {
  readonly under: AtThatTime;
  readonly found: WorkedOut;
}
const kept = new WeakMap<Assessment, Kept>();

export function workOut(data: Assessment, given: AtThatTime): WorkedOut {
  const known = kept.get(data);
  if (known && alike(known.under, given)) return known.found;
  const found = worked(data, given);
  const { mayNotBear, mayNotPush } = given;
  const under = { ...given, mayNotBear: new Set(mayNotBear), mayNotPush: new Set(mayNotPush) };
  kept.set(data, { under, found });
  return found;
}

const alike = (a: AtThatTime, b: AtThatTime): boolean =>
  a.protocol === b.protocol &&
  a.rules === b.rules &&
  a.oxygenTarget?.low === b.oxygenTarget?.low &&
  a.oxygenTarget?.high === b.oxygenTarget?.high &&
  a.oxygenFlowBefore === b.oxygenFlowBefore &&
  same(a.mayNotBear, b.mayNotBear) &&
  same(a.mayNotPush, b.mayNotPush) &&
  a.armsPushed.left === b.armsPushed.left &&
  a.armsPushed.right === b.armsPushed.right;

const same = (a: ReadonlySet<Side>, b: ReadonlySet<Side>): boolean =>
  a.has('left') === b.has('left') && a.has('right') === b.has('right');

/** Whoever was unwell on rising does not stand under a document that has no stage for it either. */
const STAND = DEFAULT_PROTOCOL.stages.find((s) => s.shows === 'stand')!;

function worked(data: Assessment, given: AtThatTime): WorkedOut {
  const { protocol, rules, oxygenTarget, oxygenFlowBefore, mayNotBear, mayNotPush } = given;
  const clear = protocol.stages.find((s) => s.shows === 'clear');
  const clearRecord = data.stages.find((s) => s.stage === clear?.id);
  const start = clearRecord
    ? judgeStart({
        readings: readingsAtStart(data.readings, toEpoch(clearRecord.at)),
        cooperation: data.cooperation,
        oxygenTarget,
        oxygenFlowBefore,
        rules: rules.start,
      })
    : null;
  const demanded = data.depth === 'full-with-pressure';
  const rising =
    demanded || data.risingSymptoms?.length || data.readings.some((r) => r.kind === 'pressure')
      ? judgeRising({
          readings: data.readings,
          symptoms: data.risingSymptoms,
          demanded,
          set: protocol.pressureSet,
          rules: rules.rising,
        })
      : null;
  const said = saidOf(data, protocol);
  const pushes = (side: Side) =>
    mayNotPush.has(side) ? false : (said.get(partKey('arm-pushes', side)) ?? given.armsPushed[side]);
  const arms = [pushes('left'), pushes('right')];
  const context = {
    start,
    rising,
    mayNotBear,
    arms: arms.includes(false) ? 'not' : arms.includes(null) ? 'not-seen' : 'both',
  } as const;
  const judged: JudgedRecord[] = [];
  for (const record of data.stages) {
    const index = protocol.stages.findIndex((s) => s.id === record.stage);
    const stage = protocol.stages[index];
    if (!stage) continue;
    const at = toEpoch(record.at);
    judged.push({ index, stage, record, at, judged: judgeStage(record, stage, context) });
  }
  const place = protocol.stages.findIndex((s) => s.shows === 'stand');
  const [index, stand] = place < 0 ? [protocol.stages.length, STAND] : [place, protocol.stages[place]!];
  if (rising && !judged.some((j) => j.index === index)) {
    const record = unwritten(stand, data, rising);
    const found = judgeStage(record, stand, context);
    if (found.outcome === 'not-met') {
      judged.push({ index, stage: stand, record, at: toEpoch(record.at), judged: found });
    }
  }
  return { judged, said, rising, start };
}

/** A Stand that nobody wrote down: of the last pressure on the feet, else of the last stage that was written down. */
function unwritten(stand: ProtocolStage, data: Assessment, rising: RisingVerdict): StageRecord {
  const onFeet = rising.readings.findLast((r) => r.posture === 'standing');
  const at = onFeet?.at ?? Math.max(...data.stages.map((s) => toEpoch(s.at)));
  return {
    stage: stand.id,
    outcome: 'not-tested',
    reason: 'stopped-before',
    how: 'free',
    people: 0,
    findings: [],
    symptom: false,
    at: toIso(at),
  };
}

/** What does not apply to a person is not there: an absent leg bears nothing, an absent arm does not push. */
function saidOf(data: Assessment, protocol: Protocol): Map<string, boolean> {
  const said = new Map<string, boolean>();
  for (const record of data.stages) {
    for (const part of protocol.stages.find((s) => s.id === record.stage)?.parts ?? []) {
      if (!part.shows) continue;
      for (const f of findingsOf(record, part)) {
        if (f.result === 'not-tested') continue;
        const key = partKey(part.shows, f.side);
        said.set(key, (said.get(key) ?? true) && f.result === 'met');
      }
    }
  }
  return said;
}
