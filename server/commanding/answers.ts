/** What a command is answered with: the accepted shape of the wire, or a problem. */
import type { Refusal } from '@footboard/shared/kernel/command-type';
import type { CommandId, EventId, WardId } from '@footboard/shared/kernel/ids';
import { REFUSALS } from '@footboard/shared/capabilities/refusals';
import type { CommandAccepted, Problem } from '@footboard/shared/wire/http';
import { refusalProblem } from './problems.ts';

export type CommandAnswer = { readonly accepted: CommandAccepted } | { readonly problem: Problem };

/** What the outcome row keeps: enough to give a repeat the same answer. */
export type StoredResult =
  | {
      readonly events: readonly {
        ward: WardId;
        stream: string;
        version: number;
        id: EventId;
        type: string;
      }[];
      readonly timeTaken?: { asEntered: string; taken: string; precision: 'exact' | 'about' };
    }
  | Refusal;

export const isRefusal = (result: object): result is Refusal => 'refused' in result;

export function accepted(
  commandId: CommandId,
  result: Exclude<StoredResult, Refusal>,
  how: { position: number; shown: boolean; repeated: boolean },
): CommandAnswer {
  return {
    accepted: {
      commandId,
      outcome: 'accepted',
      position: how.position,
      events: result.events.map((event) => ({ ...event })),
      shown: how.shown,
      repeated: how.repeated,
      ...(result.timeTaken ? { timeTaken: result.timeTaken } : {}),
    },
  };
}

export function refused(
  commandId: CommandId,
  refusal: Refusal,
  repeated: boolean,
): { readonly problem: Problem } {
  const title = (REFUSALS as Readonly<Record<string, string>>)[refusal.refused] ?? 'Not accepted';
  return { problem: refusalProblem(refusal, title, commandId, repeated) };
}
