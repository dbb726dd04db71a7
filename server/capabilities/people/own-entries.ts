/**
 * What waits for somebody: their own entries that nobody has confirmed, others' that they may co-sign, and
 * their own that disagree with another's.
 */
import { entryConfirmed, entryCosigned } from '@footboard/shared/capabilities/corrections/events';
import { timelineOf } from '@footboard/shared/capabilities/stays/rules/timeline';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { stayOf } from '@footboard/shared/kernel/event-type';
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { StreamKey } from '@footboard/shared/kernel/event-type';
import type { EventId, StaffId, StayId } from '@footboard/shared/kernel/ids';
import type { OwnEntries } from '@footboard/shared/wire/access';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import type { Log } from '../../log/log.ts';
import type { Vault } from '../../vault/vault.ts';
import { namesFor, refsIn } from '../stays/queries.ts';
import { staffNames } from './queries.ts';

/** The newest of each kind: a list to work through, not an archive. */
const AT_MOST = 200;

interface Asks {
  readonly staff: StaffId;
  /** Whether their role may co-sign. Whoever's own entries wait for a second signature may not. */
  readonly maySign: boolean;
  /** The board as it is now; null before there is one. */
  readonly board: BoardView | null;
}
type Line = TimelineEntry & { readonly stay: StayId };

export async function ownEntriesOf(
  { log, vault }: { readonly log: Log; readonly vault: Vault },
  ward: WardState,
  { staff, maySign, board }: Asks,
): Promise<OwnEntries> {
  const signs = maySign && ward.staff.get(staff)?.standing === 'own';
  const [mine, others] = await Promise.all([
    log.readUnsigned(ward.ward, {
      mark: 'unconfirmed',
      signature: entryConfirmed.name,
      by: staff,
      limit: AT_MOST,
    }),
    signs
      ? log.readUnsigned(ward.ward, {
          mark: 'cosign',
          signature: entryCosigned.name,
          notBy: staff,
          limit: AT_MOST,
        })
      : [],
  ]);
  const disputes = disputesOf(board);
  const lines = await linesOf({ log, vault }, ward, [...mine, ...others]);
  const disputed = await linesOf(
    { log, vault },
    ward,
    disputes.flatMap(({ stream, safer, other }) => [
      { stream, id: safer },
      { stream, id: other },
    ]),
    'without-texts',
  );
  const found = (asked: typeof mine): Line[] => asked.flatMap(({ id }) => lines.get(id) ?? []);
  return {
    unconfirmed: found(mine)
      .filter((line) => line.counts && line.confirmation?.state === 'unconfirmed')
      .map(brief),
    toCosign: found(others)
      .filter((line) => line.counts && line.cosign?.state === 'waiting')
      .map((line) => ({ ...brief(line), by: line.author })),
    disagreeing: disputes.flatMap(({ safer, other }) => {
      const [stands, yields] = [disputed.get(safer), disputed.get(other)];
      if (!stands || !yields) return [];
      const own = stands.author.staff === staff ? stands : yields;
      if (own.author.staff !== staff) return [];
      const theirs = own === stands ? yields : stands;
      const { event, words, author } = theirs;
      return [{ ...brief(own), stands: own === stands, against: { event, words, by: author } }];
    }),
  };
}

/** Each pair of entries that the board shows as disagreeing, once. */
function disputesOf(board: BoardView | null) {
  const pairs = (board?.beds ?? []).flatMap(({ stay }) =>
    (stay?.trust.conflicts ?? []).map(({ safer, other }) => ({
      stream: `stay/${stay!.stay}` as StreamKey,
      safer,
      other,
    })),
  );
  return [...new Map(pairs.map((pair) => [`${pair.safer} ${pair.other}`, pair])).values()]
    .filter(({ safer, other }) => safer !== other)
    .slice(0, AT_MOST);
}

const brief = ({ stay, event, occurred, words }: Line) => ({ stay, event, occurred, words });

/** The lines of these entries as the timelines of their stays have them. */
async function linesOf(
  { log, vault }: { readonly log: Log; readonly vault: Vault },
  ward: WardState,
  asked: readonly { readonly stream: StreamKey; readonly id: EventId }[],
  /** What was written freely about the person is read on the page of the stay. */
  how: 'whole' | 'without-texts' = 'whole',
): Promise<ReadonlyMap<EventId, Line>> {
  if (asked.length === 0) return new Map();
  const wanted = new Set(asked.map(({ id }) => id));
  const slices = await log.readStreams(ward.ward, [...new Set(asked.map(({ stream }) => stream))]);
  const events = [...slices.values()].flatMap((slice) => slice.events);
  const refs =
    how === 'whole'
      ? [...new Set(events.filter((e) => wanted.has(e.id)).flatMap((e) => refsIn(e.payload)))]
      : [];
  const [opened, staff] = await Promise.all([vault.open(refs), staffNames(ward, vault)]);
  const texts = Object.fromEntries([...opened].filter((one): one is [string, string] => one[1] !== null));
  const whole = namesFor(ward, staff, texts);
  const names = how === 'whole' ? whole : { ...whole, text: () => '…' };
  const lines = new Map<EventId, Line>();
  for (const { stream, version, events: its } of slices.values()) {
    const stay = stayOf(stream);
    if (stay === null) continue;
    for (const line of timelineOf({ stay, version, events: its }, names)) {
      if (wanted.has(line.event)) lines.set(line.event, { ...line, stay });
    }
  }
  return lines;
}
