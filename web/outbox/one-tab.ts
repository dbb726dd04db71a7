/** One lane goes out from one tab at a time (Web Locks), and every tab hears when the outbox has changed. */

const FREED_WITHIN_MS = 20_000;

/**
 * Runs `work` unless another tab is at that lane. With `wait` it waits its turn, for a time. A
 * browser without Web Locks (plain http) runs it at once: the server keeps two sendings of one
 * command apart by its id. True when it ran.
 */
export async function inOneTab(lane: string, wait: boolean, work: () => Promise<void>): Promise<boolean> {
  if (typeof navigator === 'undefined' || !navigator.locks) {
    await work();
    return true;
  }
  let ran = false;
  const held = async (lock: Lock | null) => {
    if (!lock) return;
    ran = true;
    await work();
  };
  const name = `footboard-outbox ${lane}`;
  try {
    await (wait
      ? navigator.locks.request(name, { signal: AbortSignal.timeout(FREED_WITHIN_MS) }, held)
      : navigator.locks.request(name, { ifAvailable: true }, held));
  } catch (error) {
    if (ran) throw error;
  }
  return ran;
}

/** Tells the other tabs, and listens to them. Says nothing of what changed. */
export function amongTabs(changed: () => void): { tell(): void; close(): void } {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel('footboard-outbox');
  channel.addEventListener('message', changed);
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has no other origin
  return { tell: () => channel.postMessage('changed'), close: () => channel.close() };
}
