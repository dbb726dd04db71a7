/**
 * Entries of this browser that went out later than they were made, or whose person changed beds before
 * they went out, until somebody has read what stands beside them.
 */
import { defineStore } from 'pinia';
import { shallowRef } from 'vue';
import { bedOf, stayIn, type PreparedCommand, type Sent } from '../../commanding/send-command.ts';
import { useBoardStore } from '../../sync/board-store.ts';
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
/** These change the bed themselves: whoever sends one knows. */
const PLACES: ReadonlySet<string> = new Set(['move-stay', 'swap-stays', 'transfer-stay', 'end-stay']);

export const useSentLate = defineStore('sent-late', () => {
  const board = useBoardStore();
  const entries = shallowRef<readonly SentLate[]>([]);

  /** Notes an entry that the server has taken, if it was late or its person is elsewhere now. `made`: epoch ms of this device. */
  function settled(command: PreparedCommand, says: string, made: number, sent: Sent): void {
    if (sent.kind !== 'accepted') return;
    const { body, bed } = command;
    const stay = stayIn(body.data);
    const moved = bed !== undefined && !PLACES.has(command.name) && bedOf(board.beds, stay) !== bed;
    if (Date.now() - made < LATE_MS && !moved) return;
    const one: SentLate = {
      id: command.commandId,
      ward: command.ward,
      says,
      stay: PLACES.has(command.name) ? null : stay,
      occurred: 'at' in body.occurred ? Date.parse(body.occurred.at) : made,
      events: sent.accepted.events.map(({ id }) => id),
      ...(bed === undefined ? {} : { bed }),
    };
    entries.value = [...entries.value.filter(({ id }) => id !== one.id), one].slice(-KEPT);
  }
  useOutgoing().onSettled(({ command, says, made }, sent) => settled(command, says, made, sent));
  const seen = (id: string): void => {
    entries.value = entries.value.filter((one) => one.id !== id);
  };
  return { entries, seen, settled };
});
