/**
 * Bad input at the door: a record that contradicts its protocol or itself is refused, naming the
 * field and the remedy. What is merely missing is not refused unless the depth demands it.
 */
import type { DataOf, Refusal } from '../../../kernel/command-type.ts';
import { toEpoch } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { recordAssessment } from '../commands.ts';
import type { AssessmentRefusal } from '../refusals.ts';
import { notApplicableReason, notTestedReason } from '../values.ts';
import type { Finding, Side, StageRecord } from '../values.ts';
import { appliesToNoLeg, findingsOf, legLeft } from './judge-stage.ts';
import { missingReadings, type RisingLimits } from './pressure-series.ts';
import type { Protocol, ProtocolStage } from './protocol.ts';

type Data = DataOf<typeof recordAssessment>;

const no = (refused: AssessmentRefusal, field: string, detail: string, remedy: string): Refusal => ({
  refused,
  detail,
  remedy,
  field,
});
const list = (all: readonly string[]) => all.join(', ');
const named = (stage: ProtocolStage) => stage.word ?? stage.id;
const SIDES: readonly Side[] = ['left', 'right'];

/** The first thing wrong with the record, or null. Fields are JSON pointers within the command's data. */
export function checkAssessment(
  protocol: Protocol,
  data: Data,
  limits: RisingLimits = DEFAULT_RULES.rising,
): Refusal | null {
  if (data.protocol.id !== protocol.id || data.protocol.version !== protocol.version) {
    return no(
      'protocol-unknown',
      '/protocol',
      `The record names protocol ${data.protocol.id} version ${data.protocol.version}; this is ${protocol.id} version ${protocol.version}.`,
      'Open the check again to load the protocol that applies, and record under it.',
    );
  }
  return (
    checkOrder(protocol, data) ?? checkStages(protocol, data) ?? checkPressureSet(protocol, data, limits)
  );
}

function checkOrder(protocol: Protocol, data: Data): Refusal | null {
  const order = protocol.stages.map((s) => s.id);
  let stoppedAt: string | null = null;
  for (const [i, record] of data.stages.entries()) {
    const field = `/stages/${i}/stage`;
    const index = order.indexOf(record.stage);
    if (index < 0) {
      return no(
        'stage-unknown',
        field,
        `Stage "${record.stage}" is not in protocol ${protocol.id}.`,
        `Use one of: ${list(order)}.`,
      );
    }
    if (index !== i) {
      return no(
        'stage-out-of-order',
        field,
        `Stage "${record.stage}" stands at place ${i + 1}; the protocol has "${order[i] ?? 'no stage'}" there.`,
        `Record the stages once each in the order ${list(order)}, from the first; one that was left out is "not tested" with its reason.`,
      );
    }
    if (stoppedAt && record.outcome !== 'not-tested') {
      return no(
        'stage-after-not-met',
        `/stages/${i}/outcome`,
        `"${record.stage}" is recorded after "${stoppedAt}" was not met: the check stops there.`,
        'Leave the later stages out, or record them as not tested.',
      );
    }
    const before = data.stages[i - 1];
    if (before && toEpoch(record.at) < toEpoch(before.at)) {
      return no(
        'stage-time-backwards',
        `/stages/${i}/at`,
        `"${record.stage}" is timed before "${before.stage}".`,
        'Check the two times; stages follow one another.',
      );
    }
    if (record.outcome === 'not-met') stoppedAt ??= record.stage;
  }
  return null;
}

function checkStages(protocol: Protocol, data: Data): Refusal | null {
  for (const [i, record] of data.stages.entries()) {
    const stage = protocol.stages.find((s) => s.id === record.stage);
    if (!stage) continue;
    const refusal = checkStage(protocol, record, stage, `/stages/${i}`, data);
    if (refusal) return refusal;
  }
  return null;
}

function checkStage(
  protocol: Protocol,
  record: StageRecord,
  stage: ProtocolStage,
  place: string,
  data: Data,
): Refusal | null {
  if (record.securedWith && !stage.securedBy.includes(record.securedWith)) {
    return no(
      'secured-with-does-not-fit',
      `${place}/securedWith`,
      `"${record.stage}" cannot be secured with ${record.securedWith.replaceAll('-', ' ')}.`,
      stage.securedBy.length
        ? `Say what held the person: ${list(stage.securedBy)}; or record it as free.`
        : 'Record it as free: nothing holds the person at this stage.',
    );
  }
  if (record.oneLeg && !stage.oneLegRoute) {
    return no(
      'one-leg-does-not-fit',
      `${place}/oneLeg`,
      `"${record.stage}" has no one-leg route.`,
      'Leave "one leg" out here; it belongs to standing.',
    );
  }
  const seen = new Set<string>();
  for (const [j, finding] of record.findings.entries()) {
    const refusal = checkFinding(finding, record, stage, seen, `${place}/findings/${j}`);
    if (refusal) return refusal;
  }
  if (record.outcome !== 'met') return null;
  const oneLeg = stage.oneLegRoute ? (record.oneLeg ?? legLeft(record, stage)) : null;
  return checkMet(record, stage, place) ?? (oneLeg ? checkArms(protocol, data, place) : null);
}

function checkFinding(
  finding: Finding,
  record: StageRecord,
  stage: ProtocolStage,
  seen: Set<string>,
  place: string,
): Refusal | null {
  const part = stage.parts.find((p) => p.id === finding.part);
  if (!part) {
    return no(
      'part-unknown',
      `${place}/part`,
      `"${finding.part}" is not a part of ${record.stage}.`,
      `Use one of: ${list(stage.parts.map((p) => p.id))}.`,
    );
  }
  if (part.sided && !finding.side) {
    return no(
      'side-missing',
      `${place}/side`,
      `"${part.id}" is tested on each side, and this finding has none.`,
      'Say left or right, one finding a side.',
    );
  }
  if (!part.sided && finding.side) {
    return no('side-does-not-fit', `${place}/side`, `"${part.id}" has no sides.`, 'Leave the side out.');
  }
  const key = `${finding.part}/${finding.side ?? ''}`;
  if (seen.has(key)) {
    return no(
      'finding-twice',
      place,
      finding.side ? `"${part.id}" ${finding.side} is there twice.` : `"${part.id}" is there twice.`,
      'Keep the one that is right.',
    );
  }
  seen.add(key);
  const reasons =
    finding.result === 'not-tested'
      ? notTestedReason.options
      : finding.result === 'not-applicable'
        ? notApplicableReason.options
        : null;
  if (reasons && !(reasons as readonly string[]).includes(finding.reason ?? '')) {
    return no(
      'reason-does-not-fit',
      `${place}/reason`,
      `"${finding.reason}" is no reason for ${finding.result.replaceAll('-', ' ')}.`,
      `Use one of: ${list(reasons)}.`,
    );
  }
  return null;
}

/** A stage recorded as met agrees with its findings, and has all its gates when it has any finding. */
function checkMet(record: StageRecord, stage: ProtocolStage, place: string): Refusal | null {
  for (const part of stage.parts) {
    if (part.gate === 'informs') continue;
    const findings = findingsOf(record, part);
    const otherLeg = (side: Side | undefined) =>
      record.oneLeg !== undefined &&
      part.shows === 'leg-bears' &&
      side !== undefined &&
      side !== record.oneLeg;
    if (
      appliesToNoLeg(
        part,
        findings.filter((f) => !otherLeg(f.side)),
      )
    ) {
      return no(
        'met-against-finding',
        `${place}/outcome`,
        `${record.stage} is recorded as met, and "${part.id}" applies to no leg.`,
        `Record ${record.stage} as not met. A leg with its prosthesis on is tested, not left out.`,
      );
    }
    const wanted = part.sided ? SIDES : [undefined];
    const enough = part.gate === 'one-side' && findings.some((f) => f.result === 'met');
    for (const side of wanted) {
      if (enough || otherLeg(side)) continue;
      const finding = findings.find((f) => f.side === side);
      const what = `"${part.id}"${side ? ` ${side}` : ''}`;
      if (!finding) {
        if (record.findings.length === 0) continue;
        return no(
          'finding-missing',
          `${place}/findings`,
          `${record.stage} is recorded as met, and ${what} has no finding.`,
          'Add the finding; if it was not tested, the stage is not met or not tested.',
        );
      }
      if (finding.result === 'not-met' || finding.result === 'not-tested') {
        return no(
          'met-against-finding',
          `${place}/outcome`,
          `${record.stage} is recorded as met, and ${what} was ${finding.result.replaceAll('-', ' ')}.`,
          `Record ${record.stage} as ${finding.result === 'not-met' ? 'not met' : 'not tested'}, or correct the finding.`,
        );
      }
    }
  }
  return null;
}

/**
 * The one-leg route needs both arms pushing. When the stage that tests them was left out of this
 * check, what was seen before decides, and that is not known here.
 */
function checkArms(protocol: Protocol, data: Data, place: string): Refusal | null {
  const parts = new Set<string>();
  const testing = new Set<string>();
  for (const stage of protocol.stages) {
    for (const p of stage.parts.filter((part) => part.shows === 'arm-pushes')) {
      parts.add(p.id);
      testing.add(stage.id);
    }
  }
  const tested = data.stages.filter((s) => testing.has(s.stage) && s.outcome !== 'not-tested');
  const pushes = (side: Side) =>
    tested.some((s) => s.findings.some((f) => parts.has(f.part) && f.side === side && f.result === 'met'));
  if (tested.every((s) => s.findings.length === 0) || SIDES.every(pushes)) return null;
  return no(
    'one-leg-needs-arms',
    `${place}/oneLeg`,
    'Standing on one leg needs both arms pushing, and that is not among the findings.',
    `Add ${list([...parts])} left and right as met, or record standing as not met.`,
  );
}

function checkPressureSet(protocol: Protocol, data: Data, limits: RisingLimits): Refusal | null {
  const standIndex = data.stages.findIndex(
    (record) => protocol.stages.find((s) => s.id === record.stage)?.shows === 'stand',
  );
  const record = data.stages[standIndex];
  const stage = protocol.stages.find((s) => s.id === record?.stage);
  if (!record || !stage || record.outcome !== 'met') return null;
  const outcome = `/stages/${standIndex}/outcome`;
  if (data.risingSymptoms?.length) {
    return no(
      'met-with-symptoms',
      outcome,
      `${named(stage)} is recorded as met with symptoms on rising.`,
      `Make safe first; record ${named(stage)} as not met and tell a nurse or the prescriber.`,
    );
  }
  if (data.depth !== 'full-with-pressure') return null;
  const missing = missingReadings(data.readings, protocol.pressureSet, limits);
  if (missing.length) {
    return no(
      'pressure-set-incomplete',
      '/readings',
      `A full check with pressure set has ${named(stage)} as met, and these pressures are missing: ${list(missing)}.`,
      `Add the readings, or record ${named(stage)} as not met. A missing reading is not a normal one.`,
    );
  }
  if (data.risingSymptoms === undefined) {
    return no(
      'symptoms-not-asked',
      '/risingSymptoms',
      'A full check with pressure set asks about symptoms on rising, and there is no answer.',
      'Ask about dizziness, faintness, blurred sight and nausea; an empty list means asked and none.',
    );
  }
  return null;
}
