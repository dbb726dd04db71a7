import type { Client } from 'pg';

const FIRST_WAIT_MS = 100;
const LONGEST_WAIT_MS = 5_000;

interface Ear {
  readonly channel: string;
  heard(payload: string): void;
  restored(): void;
}

export interface Listener {
  listen(
    channel: string,
    heard: (payload: string) => void,
    restored: () => void,
  ): Promise<() => Promise<void>>;
  close(): Promise<void>;
}

/**
 * One connection for all notifications. When it breaks it is made anew, waiting longer each time,
 * and everyone is told that bells may have been missed: a notification is only ever a doorbell.
 */
export function openListener(newClient: () => Client): Listener {
  const ears = new Set<Ear>();
  let client: Client | null = null;
  let connecting: Promise<void> | null = null;
  let retry: NodeJS.Timeout | null = null;
  let wait = FIRST_WAIT_MS;
  let closed = false;
  let lostOnce = false;

  const channels = () => new Set([...ears].map((ear) => ear.channel));
  const lost = (gone: Client) => {
    if (client !== gone) return;
    client = null;
    lostOnce = true;
    gone.removeAllListeners('notification');
    void gone.end().catch(() => undefined);
    again();
  };
  const again = () => {
    if (closed || retry) return;
    retry = setTimeout(() => {
      retry = null;
      void connect();
    }, wait);
    retry.unref();
    wait = Math.min(wait * 2, LONGEST_WAIT_MS);
  };
  const connectOnce = async () => {
    const fresh = newClient();
    fresh.on('error', () => lost(fresh));
    fresh.on('end', () => lost(fresh));
    fresh.on('notification', ({ channel, payload }) => {
      for (const ear of ears) if (ear.channel === channel) ear.heard(payload ?? '');
    });
    try {
      await fresh.connect();
      for (const channel of channels()) await fresh.query(`listen ${fresh.escapeIdentifier(channel)}`);
    } catch {
      void fresh.end().catch(() => undefined);
      lostOnce = true;
      again();
      return;
    }
    if (closed) {
      await fresh.end();
      return;
    }
    client = fresh;
    wait = FIRST_WAIT_MS;
    if (lostOnce) for (const ear of ears) ear.restored();
    lostOnce = false;
  };
  const connect = (): Promise<void> => {
    connecting ??= connectOnce().finally(() => (connecting = null));
    return connecting;
  };

  return {
    async listen(channel, heard, restored) {
      const ear: Ear = { channel, heard, restored };
      const isNew = !channels().has(channel);
      ears.add(ear);
      if (connecting) await connecting;
      if (client && isNew) {
        const current = client;
        await current.query(`listen ${current.escapeIdentifier(channel)}`).catch(() => lost(current));
      } else if (!client && !retry) await connect();
      return async () => {
        ears.delete(ear);
      };
    },
    async close() {
      closed = true;
      if (retry) clearTimeout(retry);
      if (connecting) await connecting;
      const current = client;
      client = null;
      await current?.end().catch(() => undefined);
    },
  };
}
