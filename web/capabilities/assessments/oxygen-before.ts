/** The oxygen flow of the checks before this one, from the stay's own entries: more oxygen since then asks first. */
import { assessmentRecorded } from '@footboard/shared/capabilities/assessments/events';
import { lastOxygenFlow } from '@footboard/shared/capabilities/assessments/rules/may-start';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import { payloadNow } from '../corrections/correction-draft.ts';

/** Litres per minute; null when no check has it written down. A withdrawn check says nothing, a corrected one what it says now. */
export function oxygenFlowBefore(timeline: readonly TimelineEntry[]): number | null {
  const checks = timeline
    .filter((entry) => entry.type === assessmentRecorded.name && entry.counts)
    .toSorted((a, b) => b.occurred - a.occurred);
  for (const entry of checks) {
    const read = assessmentRecorded.schema.safeParse(payloadNow(entry, timeline));
    const flow = read.success ? lastOxygenFlow(read.data.readings) : null;
    if (flow !== null) return flow;
  }
  return null;
}
