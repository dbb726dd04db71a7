import type { LoggedEvent, Names } from '@footboard/shared/kernel/event-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { toEpoch } from '@footboard/shared/kernel/times';
import { stayBegun, stayEnded } from '@footboard/shared/capabilities/stays/events';
import { timelineOf } from '@footboard/shared/capabilities/stays/rules/timeline';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { sayDayTime } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import type { StayPage } from '@footboard/shared/wire/http';
import { Answered, problem } from '../../commanding/problems.ts';
import type { Log } from '../../log/log.ts';
import type { Boards } from '../../projecting/board.ts';
import type { Vault } from '../../vault/vault.ts';
import { boardNow } from '../board/queries.ts';
import { TEXT_REMOVED, staffNames } from '../people/queries.ts';

/** One stay with its names and texts resolved, folded to the position the board has reached. */
export async function stayPageOf(
  ports: { boards: Boards; log: Log; vault: Vault },
  ward: WardState,
  stay: StayId,
): Promise<StayPage> {
  const { p, board } = boardNow(ports.boards, ward.ward);
  const { events, version } = await ports.log.readStream(ward.ward, streamKey('stay', stay), 0, p);
  if (version === 0) throw new Answered(noSuchStay(ward.ward, stay));

  const begun = payloadOf<typeof stayBegun>(events, stayBegun.name);
  const ended = events.findLast((event) => event.type === stayEnded.name);
  const next = payloadOf<typeof stayEnded>(events, stayEnded.name)?.next;
  const identityRef = begun?.identity?.ref;
  const refs = [...new Set(events.flatMap((event) => refsIn(event.payload)))];
  const [opened, staff] = await Promise.all([ports.vault.open(refs), staffNames(ward, ports.vault)]);
  const texts = Object.fromEntries(
    refs.filter((ref) => ref !== identityRef).map((ref) => [ref, opened.get(ref) ?? TEXT_REMOVED]),
  );
  return {
    ward: ward.ward,
    stay,
    position: p,
    ended: ended?.occurred ?? null,
    identity: identityIn(identityRef === undefined ? null : opened.get(identityRef)),
    bed: board.beds.find((bed) => bed.stay?.stay === stay) ?? null,
    texts,
    erased: refs.some((ref) => opened.get(ref) === null),
    previous: begun?.previous ?? null,
    next: next ?? null,
    timeline: timelineOf({ stay, version, events }, namesFor(ward, staff, texts)),
  };
}

/** Names for putting entries of a stay into words. `texts` by reference. */
export function namesFor(
  ward: WardState,
  staff: ReadonlyMap<StaffId, string>,
  texts: Readonly<Record<string, string>>,
): Names {
  const labels = new Map<string, string>(ward.beds.map(({ bed, label }) => [bed, label]));
  return {
    bed: (id) => labels.get(id) ?? 'no longer listed',
    staff: (id) => staff.get(id as StaffId) ?? 'a staff member',
    text: (ref) => (ref && texts[ref.ref]) ?? TEXT_REMOVED,
    time: (at) => sayDayTime(ward.zone, typeof at === 'string' ? toEpoch(at) : at),
  };
}

const payloadOf = <T extends typeof stayBegun | typeof stayEnded>(
  events: readonly LoggedEvent[],
  type: string,
): PayloadOf<T> | undefined =>
  events.findLast((event) => event.type === type)?.payload as PayloadOf<T> | undefined;

function identityIn(text: string | null | undefined): StayPage['identity'] {
  return text === null || text === undefined ? null : (JSON.parse(text) as StayPage['identity']);
}

/** References to kept texts, wherever they stand in a payload. */
export function refsIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const entries = Object.entries(value);
  const [only] = entries;
  if (entries.length === 1 && only?.[0] === 'ref' && typeof only[1] === 'string') return [only[1]];
  return entries.flatMap(([, inner]) => refsIn(inner));
}

export const noSuchStay = (ward: WardId, stay: StayId) =>
  problem(
    'no-such-stay',
    `Ward ${ward} has no stay ${stay}.`,
    'Open the stay from the board; a person who changed wards has a new stay there.',
  );
