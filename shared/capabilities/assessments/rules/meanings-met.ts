import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../events.ts';
import type { ProtocolLookup, StageMeaning } from './protocol.ts';

/** Meanings of the stages met in one assessment, with the stage's id; nothing for an unknown protocol. */
export function meaningsMet(
  assessment: PayloadOf<typeof assessmentRecorded>,
  protocols: ProtocolLookup,
): ReadonlyMap<StageMeaning, string> {
  const met = new Map<StageMeaning, string>();
  const protocol = protocols(assessment.protocol.id, assessment.protocol.version);
  for (const record of assessment.stages) {
    if (record.outcome !== 'met') continue;
    const shows = protocol?.stages.find((s) => s.id === record.stage)?.shows;
    if (shows) met.set(shows, record.stage);
  }
  return met;
}
