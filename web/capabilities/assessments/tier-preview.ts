/** What the shared rules would make of this check alone, before it is sent. A preview, never the ward's state. */
import type { TierView } from '@footboard/shared/capabilities/board/moving-view';
import { assessmentRecorded } from '@footboard/shared/capabilities/assessments/events';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { judgeTier } from '@footboard/shared/capabilities/assessments/rules/tier';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import type { Role } from '@footboard/shared/kernel/author';
import type { EventId, StaffId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';

export interface PreviewInput {
  readonly data: object;
  readonly protocol: Protocol;
  readonly rules: RulesDocument;
  readonly ward: Pick<WardState, 'zone' | 'wardDayFrom' | 'nightFrom' | 'nightTo'>;
  readonly role: Role;
  readonly now: EpochMs;
}

/** Null when the entry is not complete enough to be judged. */
export function previewTier(input: PreviewInput): TierView | null {
  const { stay: _stay, note: _note, ...payload } = input.data as Record<string, unknown>;
  const parsed = assessmentRecorded.schema.safeParse(payload);
  if (!parsed.success) return null;
  const judged = judgeTier({
    facts: [
      {
        id: 'not-recorded' as EventId,
        type: assessmentRecorded.name,
        data: parsed.data,
        occurred: input.now,
        precision: 'exact',
        recorded: input.now,
        position: 1,
        author: { staff: 'not-recorded' as StaffId, role: input.role },
        source: { kind: 'person' },
        rank: assessmentRecorded.rank(parsed.data),
        correctedBy: null,
      },
    ],
    t: input.now,
    calendar: wardCalendar(input.ward),
    rules: input.rules,
    protocols: (id, version) =>
      id === input.protocol.id && version === input.protocol.version ? input.protocol : null,
  });
  return judged.view;
}
