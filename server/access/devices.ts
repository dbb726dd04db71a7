/** Devices of a ward: who they are by their key, what they painted, and how they are taken off again. */
import type { DeviceId, StaffId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { Answered, problem } from '../commanding/problems.ts';
import type { KnownDevice } from './identity.ts';
import { tokenHash } from './keys.ts';
import { openPairing } from './pairing.ts';
import type { AccessParts } from './parts.ts';
import type { DeviceLine, Devices } from './ports.ts';

/** A key is believed so long without asking the database; taking it back here ends that at once. */
const BELIEVED_MS = 5_000;
const KEPT_AT_MOST = 2_000;
/** What screens say of themselves is written so often. */
const WRITE_EVERY_MS = 5_000;

interface Seen {
  seen: EpochMs;
  painted?: number;
  paintedAt?: EpochMs;
  page?: string;
}
interface Row extends KnownDevice {
  readonly place: string;
  readonly approved_by: StaffId;
  readonly approved: EpochMs;
  readonly seen: EpochMs | null;
  readonly page: string | null;
  readonly painted: number | null;
  readonly painted_at: EpochMs | null;
  readonly revoked: EpochMs | null;
}
const COLUMNS =
  'device, kind, ward, level, place, approved_by, approved, seen, page, painted, painted_at, revoked';

export function openDevices(parts: AccessParts): Devices {
  const { database, clock, logger } = parts;
  const pairing = openPairing(parts);
  const listeners = new Set<(device: DeviceId) => void>();
  const believed = new Map<string, { readonly device: KnownDevice; readonly until: number }>();
  /** Grows with every key taken back: what was asked before that is asked again. */
  let revokes = 0;
  let waiting = new Map<DeviceId, Seen>();
  const sockets = new Map<DeviceId, number>();

  function believe(hash: string, device: KnownDevice): void {
    believed.delete(hash);
    believed.set(hash, { device, until: performance.now() + BELIEVED_MS });
    if (believed.size > KEPT_AT_MOST) believed.delete(believed.keys().next().value!);
  }

  async function find(hash: string): Promise<KnownDevice | null> {
    for (;;) {
      const before = revokes;
      const [found] = await database.query<KnownDevice>(
        'select device, kind, ward, level from device where key_hash = $1 and revoked is null',
        [hash],
      );
      if (before !== revokes) continue;
      if (found) believe(hash, found);
      return found ?? null;
    }
  }

  function saw(device: DeviceId, what?: { feed: number; page: string }): void {
    const seen = clock.now();
    const known = waiting.get(device) ?? { seen };
    known.seen = seen;
    if (what) Object.assign(known, { painted: what.feed, paintedAt: seen, page: what.page });
    waiting.set(device, known);
  }

  async function write(): Promise<void> {
    if (waiting.size === 0) return;
    const writing = waiting;
    waiting = new Map();
    try {
      await database.query(
        `update device set
           seen = greatest(device.seen, said.seen),
           painted = coalesce(said.painted, device.painted),
           painted_at = coalesce(said.painted_at, device.painted_at),
           page = coalesce(said.page, device.page)
         from json_to_recordset($1::json)
           as said (device text, seen bigint, painted bigint, painted_at bigint, page text)
         where device.device = said.device`,
        [
          JSON.stringify(
            [...writing].map(([device, { seen, painted, paintedAt, page }]) => ({
              device,
              seen,
              painted,
              painted_at: paintedAt,
              page,
            })),
          ),
        ],
      );
    } catch (error) {
      // Said again with what comes meanwhile: a receipt that is late is still a receipt.
      for (const [device, said] of writing) waiting.set(device, { ...said, ...waiting.get(device) });
      logger.warn({ err: error }, 'what the screens painted could not be written; it is kept');
    }
  }
  let writing = Promise.resolve();
  const timer = setInterval(() => (writing = writing.then(write)), WRITE_EVERY_MS);
  timer.unref();

  const lineOf = ({ approved_by, painted_at, ...row }: Row): DeviceLine => {
    const said = waiting.get(row.device);
    return {
      ...row,
      approvedBy: approved_by,
      seen: said?.seen ?? row.seen,
      painted: said?.painted ?? row.painted,
      paintedAt: said?.paintedAt ?? painted_at,
      page: said?.page ?? row.page,
      connected: sockets.has(row.device),
    };
  };

  return {
    beginPairing: (kind, origin) => pairing.begin(kind, origin),
    claim: (poll) => pairing.claim(poll),

    async approve(ward, by, request) {
      const { device, level, at } = await pairing.approve(ward, by, request);
      const { kind, place } = request;
      return {
        device,
        kind,
        ward,
        level,
        place,
        approved: at,
        approvedBy: by,
        seen: null,
        painted: null,
        paintedAt: null,
        page: null,
        revoked: null,
        connected: false,
      };
    },

    async device(key) {
      const hash = tokenHash(key);
      const known = believed.get(hash);
      const device = known && performance.now() < known.until ? known.device : await find(hash);
      if (device) saw(device.device);
      return device;
    },

    async list(ward) {
      const rows = await database.query<Row>(
        `select ${COLUMNS} from device where ward = $1 order by revoked is not null, place, approved`,
        [ward],
      );
      return rows.map(lineOf);
    },

    async revoke(ward, device, by) {
      const found = await database.query(
        `update device set revoked = coalesce(revoked, $3), revoked_by = coalesce(revoked_by, $4)
         where ward = $1 and device = $2 returning device`,
        [ward, device, clock.now(), by],
      );
      if (found.length === 0) throw new Answered(noSuchDevice());
      revokes++;
      for (const [hash, known] of believed) if (known.device.device === device) believed.delete(hash);
      for (const listener of listeners) listener(device);
      await database.query('delete from signing_window where device = $1', [device]);
    },

    onRevoke(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },

    saw,

    connected(device) {
      sockets.set(device, (sockets.get(device) ?? 0) + 1);
      let open = true;
      return () => {
        if (!open) return;
        open = false;
        const left = sockets.get(device)! - 1;
        if (left > 0) sockets.set(device, left);
        else sockets.delete(device);
      };
    },

    async stop() {
      clearInterval(timer);
      await writing;
      await write();
    },
  };
}

const noSuchDevice = () =>
  problem(
    'no-such-device',
    'No device of this ward has that id.',
    'Open the list of devices again and choose one of it.',
  );
