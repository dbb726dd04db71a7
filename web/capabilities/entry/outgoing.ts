/**
 * Entries on their way to the server. An entry gets its command id once, when a person sends it; a
 * further try sends the same id and the same body, so that it can never count twice. What has not
 * reached the server stays here, whatever page is open, until it is sent or a person gives it up.
 */
import { defineStore } from 'pinia';
import { computed, inject, shallowRef, type InjectionKey } from 'vue';
import type { Problem } from '@footboard/shared/wire/http';
import { deliverCommand, type PreparedCommand, type Sent } from '../../commanding/send-command.ts';

export type Sender = (command: PreparedCommand) => Promise<Sent>;
/** Another way to deliver, for a page without a server. */
export const SENDER: InjectionKey<Sender> = Symbol('Sender');
export const useSender = (): Sender => inject(SENDER, (command: PreparedCommand) => deliverCommand(command));

/** One entry that has not reached the server, with the words a person knows it by. */
export interface Unsent {
  readonly command: PreparedCommand;
  readonly says: string;
  readonly trying: boolean;
  /** What the last try came to; null while the first is under way. */
  readonly problem: Problem | null;
}

export const useUnsent = defineStore('unsent entries', () => {
  const entries = shallowRef<readonly Unsent[]>([]);
  const put = (one: Unsent) => {
    const others = entries.value.filter((e) => e.command.commandId !== one.command.commandId);
    entries.value = [...others, one];
  };
  const drop = (commandId: string) => {
    entries.value = entries.value.filter((e) => e.command.commandId !== commandId);
  };

  /** Sends an entry; it stays listed as long as no answer has come. */
  async function send(command: PreparedCommand, says: string, sender: Sender): Promise<Sent> {
    put({ command, says, trying: true, problem: null });
    const sent = await sender(command);
    if (sent.kind === 'not-sent') put({ command, says, trying: false, problem: sent.problem });
    else drop(command.commandId);
    return sent;
  }

  /** Sends a listed entry again, as it is. A refusal keeps it listed, so that nothing vanishes unread. */
  async function again(commandId: string, sender: Sender): Promise<Sent | null> {
    const listed = entries.value.find((e) => e.command.commandId === commandId);
    if (!listed || listed.trying) return null;
    const sent = await send(listed.command, listed.says, sender);
    if (sent.kind === 'problem') put({ ...listed, trying: false, problem: sent.problem });
    return sent;
  }

  const waiting = computed(() => entries.value.filter((e) => !e.trying));
  return { entries, waiting, send, again, giveUp: drop };
});
