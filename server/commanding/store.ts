/**
 * Step 6 of the recipe, second half: append once, whatever the connection does. A twin of the same
 * command, a repeat, and a commit whose answer was lost all end in the one stored outcome.
 */
import { SubjectErased } from '../log/errors.ts';
import { CommandSeen, LogUnavailable, OutcomeUnknown } from '../log/log.ts';
import type { Appended, AppendRequest, CommandOutcome, Log } from '../log/log.ts';
import { Answered, problem } from './problems.ts';
import type { Said } from './prepare.ts';

export type Stored =
  | { readonly appended: Appended; readonly seen: null }
  | { readonly appended: null; readonly seen: CommandOutcome };

/** @throws VersionConflict, Answered */
export async function store(log: Log, request: AppendRequest): Promise<Stored> {
  try {
    return await appendOnce(log, request);
  } catch (error) {
    if (!(error instanceof OutcomeUnknown)) throw asAnswer(error);
  }
  // Whether the lost commit happened is written in the outcome row; if not, the same id may go again.
  try {
    const { ward, commandId } = request.command;
    const seen = await log.outcomeOf(ward, commandId);
    return seen ? { appended: null, seen } : await appendOnce(log, request);
  } catch (error) {
    if (error instanceof OutcomeUnknown || error instanceof LogUnavailable) throw outcomeUnknown();
    throw asAnswer(error);
  }
}

async function appendOnce(log: Log, request: AppendRequest): Promise<Stored> {
  try {
    return { appended: await log.append(request), seen: null };
  } catch (error) {
    if (error instanceof CommandSeen) return { appended: null, seen: error.stored };
    throw error;
  }
}

/** @throws Answered `command-id-reused` unless the stored outcome is of this very command and author */
export function sameCommand(said: Said, seen: CommandOutcome): CommandOutcome {
  const same = seen.bodyHash === said.hash && seen.author.staff === said.staff;
  if (same) return seen;
  const detail =
    seen.bodyHash === said.hash
      ? 'Another person already sent a command with this id.'
      : `A "${seen.name}" with this id and another content is already stored.`;
  const remedy = 'Give each entry an id of its own; send the same id again only to repeat the same entry.';
  throw new Answered(
    problem('command-id-reused', detail, remedy, {
      errors: [{ pointer: '/commandId', detail, remedy }],
      commandId: said.envelope.commandId,
    }),
  );
}

/** @throws Answered when the database cannot be reached */
export async function availableOrAnswered<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    throw asAnswer(error);
  }
}

function asAnswer(error: unknown): unknown {
  if (error instanceof SubjectErased) {
    return new Answered(
      problem(
        'text-erased',
        'The personal data of this person was erased, so nothing more can be written about them.',
        'If the person is here again, begin a new stay.',
      ),
    );
  }
  if (!(error instanceof LogUnavailable)) return error;
  return new Answered(
    problem(
      'database-away',
      'The database cannot be reached; nothing was stored.',
      'Keep the entry and send it again with the same id; if it goes on, use paper and tell whoever runs Footboard.',
    ),
  );
}

const outcomeUnknown = () =>
  new Answered(
    problem(
      'outcome-unknown',
      'The connection to the database broke before it answered, so this entry may or may not be stored.',
      'Send again with the same id: that is safe, it is stored at most once.',
    ),
  );
