import type { BedView } from '@footboard/shared/capabilities/board/view';
import type { CommandId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { z } from 'zod';
import type { commandEnvelope } from '@footboard/shared/kernel/command-type';
import type { OccurredInput } from '@footboard/shared/kernel/times';
import { commandAccepted, type CommandAccepted, type Problem } from '@footboard/shared/wire/http';
import { problemOf, unreachable } from '../asking/get-page.ts';
import { newId, thisDevice } from '../people/device.ts';
import { useWhoStore } from '../people/who-store.ts';
import { useBoardStore } from '../sync/board-store.ts';

type Envelope = z.input<typeof commandEnvelope>;

/** A command as it will be sent, made once: sending it again is the same command, never a second one. */
export interface PreparedCommand {
  readonly ward: WardId;
  readonly name: string;
  readonly commandId: CommandId;
  /** The staff id that stands for it, fixed when it was made. */
  readonly staff: StaffId | null;
  /** Label of the bed its person was in when it was made, as far as this page knew. Not sent. */
  readonly bed?: string;
  readonly body: Envelope & { readonly data: unknown };
}

export type Sent =
  | { readonly kind: 'accepted'; readonly accepted: CommandAccepted }
  /** The server said no, or could not: `problem` says what to do. Nothing was recorded unless it says so. */
  | { readonly kind: 'problem'; readonly problem: Problem }
  /**
   * No answer came after all tries, or the server asks to wait. It may or may not be recorded; deliver
   * the same command again. `again`: not within this time (ms), where the server said so.
   */
  | {
      readonly kind: 'not-sent';
      readonly problem: Problem;
      readonly command: PreparedCommand;
      readonly again?: number;
    };

export interface Ask {
  readonly ward: WardId;
  readonly name: string;
  readonly data: unknown;
  /** Defaults to now on the server's clock as this page knows it. */
  readonly occurred?: OccurredInput;
  /** Defaults to `latest`. */
  readonly expect?: Envelope['expect'];
  readonly fromOutbox?: boolean;
  /** Serial of the paper sheet it is keyed from. */
  readonly paper?: string | undefined;
}

/** The stay that an entry is about; null for an arrival and for what is the ward's own. */
export function stayIn(data: unknown): string | null {
  const stay = (data as { stay?: unknown } | null)?.stay;
  return typeof stay === 'string' ? stay : null;
}
/** Label of the bed that a stay is in; undefined where it is in none of these. */
export const bedOf = (beds: readonly BedView[], stay: string | null): string | undefined =>
  stay === null ? undefined : beds.find((bed) => bed.stay?.stay === stay)?.label;

export function prepareCommand(ask: Ask): PreparedCommand {
  const device = new Date();
  const board = useBoardStore();
  const now = board.serverNow() ?? device.getTime();
  const bed = bedOf(board.beds, stayIn(ask.data));
  const commandId = newId() as CommandId;
  return {
    ward: ask.ward,
    name: ask.name,
    commandId,
    staff: useWhoStore().chosenId,
    ...(bed === undefined ? {} : { bed }),
    body: {
      commandId,
      occurred: ask.occurred ?? { at: new Date(now).toISOString(), precision: 'exact' },
      entered: { at: device.toISOString(), offsetMinutes: -device.getTimezoneOffset() },
      source:
        ask.paper === undefined
          ? { kind: 'person', device: thisDevice() }
          : { kind: 'paper', device: thisDevice(), serial: ask.paper },
      expect: ask.expect ?? 'latest',
      fromOutbox: ask.fromOutbox ?? false,
      // A copy: what was sent does not change under a form that is written on.
      data: JSON.parse(JSON.stringify(ask.data)) as unknown,
    },
  };
}

const PAUSES_MS = [400, 1_200];
/** Answers that mean "try the very same command again": the server says so or was not reached. */
const AGAIN = new Set([502, 503, 504]);
const TOO_MANY = 429;
/** A cable that was pulled says nothing at all: after this a try counts as unanswered. */
const ANSWER_WITHIN_MS = 8_000;

/** Send, and on a network failure send again with the same id. Never throws. */
export async function deliverCommand(
  command: PreparedCommand,
  pauses: readonly number[] = PAUSES_MS,
): Promise<Sent> {
  let problem: Problem = unreachable('Not sent yet');
  for (let round = 0; ; round++) {
    const patience = new AbortController();
    const late = setTimeout(() => patience.abort(), ANSWER_WITHIN_MS);
    try {
      const answer = await fetch(`/api/wards/${command.ward}/commands/${command.name}`, {
        method: 'POST',
        headers: {
          'content-type': 'application/json',
          'x-footboard-device-clock': new Date().toISOString(),
          ...(command.staff ? { 'x-footboard-staff': command.staff } : {}),
        },
        body: JSON.stringify(command.body),
        signal: patience.signal,
      });
      if (answer.ok) {
        const accepted = commandAccepted.safeParse(await answer.json());
        if (accepted.success) return { kind: 'accepted', accepted: accepted.data };
        problem = { ...unreachable('Recorded or not'), detail: 'The answer could not be read.' };
      } else {
        problem = await problemOf(answer);
        if (answer.status === TOO_MANY) {
          return { kind: 'not-sent', problem, command, again: secondsToWait(answer) * 1_000 };
        }
        if (!AGAIN.has(answer.status)) return { kind: 'problem', problem };
      }
    } catch {
      problem = unreachable('Not sent yet');
    } finally {
      clearTimeout(late);
    }
    // Silence has taken its time already.
    const pause = patience.signal.aborted ? undefined : pauses[round];
    if (pause === undefined) return { kind: 'not-sent', problem, command };
    await new Promise((done) => setTimeout(done, pause));
  }
}

/** Retry-After (RFC 9110, 10.2.3), in seconds; a minute when it says nothing we can read. */
const secondsToWait = (answer: Response): number => {
  const seconds = Number(answer.headers.get('retry-after') ?? NaN);
  return Number.isFinite(seconds) && seconds >= 0 ? Math.min(seconds, 600) : 60;
};

/** Prepare and deliver. Keep the command of a `not-sent` answer and hand it to `deliverCommand` again. */
export const sendCommand = (ask: Ask): Promise<Sent> => deliverCommand(prepareCommand(ask));
