import { ref, shallowRef } from 'vue';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Problem } from '@footboard/shared/wire/http';
import { deliverCommand, prepareCommand, type PreparedCommand } from './send-command.ts';

/**
 * Sending from a form that is not at the bedside: one command at a time, its problem kept for the form
 * to show. An entry that got no answer goes out again as the same command when it is sent unchanged.
 */
export function useSending(ward: () => string) {
  const sending = ref(false);
  const problem = shallowRef<Problem | null>(null);
  let unsent: PreparedCommand | null = null;

  /** True when the server has taken it. */
  async function send(name: string, data: unknown): Promise<boolean> {
    if (sending.value) return false;
    const same =
      unsent?.ward === ward() &&
      unsent.name === name &&
      JSON.stringify(unsent.body.data) === JSON.stringify(data);
    const command = same && unsent ? unsent : prepareCommand({ ward: ward() as WardId, name, data });
    sending.value = true;
    const sent = await deliverCommand(command);
    sending.value = false;
    unsent = sent.kind === 'not-sent' ? command : null;
    problem.value = sent.kind === 'accepted' ? null : sent.problem;
    return sent.kind === 'accepted';
  }
  return { sending, problem, send, forget: () => (problem.value = null) };
}
