/** What a stay would be shown as if a drafted entry were recorded. */
import { ifRecorded } from '@footboard/shared/capabilities/board/rules/if-recorded';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { PlanPreview } from '@footboard/shared/wire/preview';
import type { Draft } from '../../commanding/handle-command.ts';

/** Pure. The draft must be of an entry for this stay: its ward and its stay are then known. */
export function previewOf({ request, read, now }: Draft, stay: StayId): PlanPreview {
  const { ward } = request.command;
  const { state, calendar } = read.ward(ward);
  const stream = streamKey('stay', stay);
  const { version, events } = read.slice(ward, stream);
  const [position, recorded] = [
    Math.max(0, ...events.map((e) => e.position)),
    Math.max(now, ...events.map((e) => e.recorded)),
  ];
  const drafted: LoggedEvent[] = request.events
    .filter((event) => event.stream === stream)
    .map((event, i) => ({ ...event, position: position + 1 + i, recorded }));
  const seen = ifRecorded({ stay, version, events }, drafted, state!, calendar!, now);
  return {
    ward,
    stay,
    version,
    ...seen,
    moves: [...seen.moves],
    unconfirmed: drafted.some(({ source }) => source.unconfirmed === true),
  };
}
