import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { courseOf } from '@footboard/shared/capabilities/board/rules/course';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { StayCourse } from '@footboard/shared/wire/pictures';
import { Answered } from '../../commanding/problems.ts';
import type { Streams } from '../../commanding/streams.ts';
import { noSuchStay } from '../stays/queries.ts';

/** How one stay went, from its whole stream as it stands now. */
export async function coursePage(
  streams: Streams,
  { state, calendar }: { state: WardState; calendar: WardCalendar },
  stay: StayId,
  now: EpochMs,
): Promise<StayCourse> {
  const stream = streamKey('stay', stay);
  const { events, version } = (await streams.read([{ ward: state.ward, stream }])).slice(state.ward, stream);
  const course = courseOf({ stay, version, events }, state, calendar, now);
  if (!course) throw new Answered(noSuchStay(state.ward, stay));
  return { ward: state.ward, stay, position: events.at(-1)?.position ?? 0, ...course };
}
