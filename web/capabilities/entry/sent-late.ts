/** Entries of this browser that went out later than they were made, until somebody has read what stands beside them. */
import { defineStore } from 'pinia';
import { shallowRef } from 'vue';
import { useOutgoing } from './outgoing.ts';
import type { SentEntry } from './stands-beside.ts';

export interface SentLate extends SentEntry {
  readonly id: string;
  readonly ward: string;
  readonly says: string;
}
/** Sooner than this an entry is not late: nobody needs to be told. */
const LATE_MS = 60_000;
const KEPT = 20;

export const useSentLate = defineStore('sent-late', () => {
  const entries = shallowRef<readonly SentLate[]>([]);
  useOutgoing().onSettled(({ command, says, made }, sent) => {
    if (sent.kind !== 'accepted' || Date.now() - made < LATE_MS) return;
    const { occurred } = command.body;
    const stay = (command.body.data as { stay?: unknown } | null)?.stay;
    const one: SentLate = {
      id: command.commandId,
      ward: command.ward,
      says,
      stay: typeof stay === 'string' ? stay : null,
      occurred: 'at' in occurred ? Date.parse(occurred.at) : made,
      events: sent.accepted.events.map(({ id }) => id),
    };
    entries.value = [...entries.value.filter(({ id }) => id !== one.id), one].slice(-KEPT);
  });
  const seen = (id: string): void => {
    entries.value = entries.value.filter((one) => one.id !== id);
  };
  return { entries, seen };
});
