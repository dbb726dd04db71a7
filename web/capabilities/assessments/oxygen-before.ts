/** The oxygen flow of the checks before this one, from the stay's own entries: more oxygen since then asks first. */
import { assessmentRecorded } from '@footboard/shared/capabilities/assessments/events';
import {
  oxygenFlowAfter,
  type OxygenFlowBefore,
} from '@footboard/shared/capabilities/assessments/rules/may-start';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import { payloadNow } from '../corrections/correction-draft.ts';

/** Of the checks so far. A withdrawn check says nothing, a corrected one what it says now. */
export function oxygenFlowBefore(timeline: readonly TimelineEntry[]): OxygenFlowBefore {
  const checks = timeline
    .filter((entry) => entry.type === assessmentRecorded.name && entry.counts)
    .toSorted((a, b) => a.occurred - b.occurred);
  let flow: OxygenFlowBefore = null;
  for (const entry of checks) {
    const read = assessmentRecorded.schema.safeParse(payloadNow(entry, timeline));
    if (read.success) flow = oxygenFlowAfter(read.data.readings, flow);
  }
  return flow;
}
