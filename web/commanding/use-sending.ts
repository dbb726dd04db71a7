import { ref, shallowRef } from 'vue';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Problem } from '@footboard/shared/wire/http';
import { needsSignIn } from '../people/sign-in-first.ts';
import { deliverCommand, prepareCommand, type PreparedCommand } from './send-command.ts';

/**
 * Sending from a form that is not at the bedside: one command at a time, its problem kept for the form
 * to show. A command that got no answer goes out again as the same one when it is sent unchanged. It
 * does not wait in the outbox: a setting that goes out by itself hours later would undo what others
 * have set since.
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
    let sent = await deliverCommand(command);
    if (sent.kind === 'problem' && sent.problem.status === 401) {
      const proof = await needsSignIn({ ward: command.ward, command: name, staff: command.staff });
      if (proof === 'signed') sent = await deliverCommand(prepareCommand({ ward: command.ward, name, data }));
    }
    sending.value = false;
    unsent = sent.kind === 'not-sent' ? command : null;
    problem.value = sent.kind === 'accepted' ? null : sent.problem;
    return sent.kind === 'accepted';
  }
  return { sending, problem, send, forget: () => (problem.value = null) };
}
