/**
 * How a command becomes events. Read `handle` and `#settle` from top to bottom: they are the whole recipe.
 *
 * Accepted and refused-by-rule outcomes are stored and given again for a repeat of the same id.
 * Invalid, unauthorised, conflicting and broken commands leave nothing behind.
 */
import type { Author } from '@footboard/shared/kernel/author';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import { wardId } from '@footboard/shared/kernel/ids';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { setUpWard } from '@footboard/shared/capabilities/wards/commands';
import type { Problem } from '@footboard/shared/wire/http';
import type { Identity } from '../access/identity.ts';
import { plainly } from '../capabilities/people/author-policy.ts';
import type { AuthorPolicy } from '../capabilities/people/author-policy.ts';
import { RestsOnPast, VersionConflict } from '../log/log.ts';
import type { Appended, AppendRequest, CommandOutcome, Log } from '../log/log.ts';
import type { Clock } from '../platform/clock.ts';
import type { Logger } from '../platform/logging.ts';
import type { Boards } from '../projecting/board.ts';
import { accepted, isRefusal, refused } from './answers.ts';
import type { CommandAnswer, StoredResult } from './answers.ts';
import { decideContext } from './context.ts';
import type { Decider } from './decider.ts';
import { InTurn } from './in-turn.ts';
import { whenItOccurred } from './occurred.ts';
import { acceptedOutcome, bodyHash, eventsToAppend, refusedOutcome } from './prepare.ts';
import type { Authored, Said } from './prepare.ts';
import { Answered, broken, conflict, noSuchCommand, noSuchWard } from './problems.ts';
import { availableOrAnswered, sameCommand, store } from './store.ts';
import type { Streams, StreamsRead } from './streams.ts';
import { validate } from './validate.ts';
import type { ValidCommand } from './validate.ts';

/** "Latest" is decided again this often on a conflict before the person is asked to send again. */
const DECIDE_AGAIN = 3;
/** How long an answer waits for the board to show the entry. */
const SHOWN_WITHIN_MS = 1_000;

export interface CommandRequest {
  readonly ward: string;
  readonly name: string;
  readonly body: unknown;
  /** What the request says about who sends it; the policy makes an author of it, or refuses. */
  readonly claim: Identity;
  /**
   * The server's own word: single sign-on keeps the staff list by the provider's groups. Set inside
   * this program only, never from a request; no policy is asked then.
   */
  readonly own?: Author;
  /** The device's clock when the request left, if it said so. */
  readonly deviceClock?: EpochMs;
}

export interface CommandPorts {
  readonly log: Log;
  readonly streams: Streams;
  readonly boards: Pick<Boards, 'waitFor'>;
  readonly clock: Clock;
  readonly authors: AuthorPolicy;
  readonly deciders: ReadonlyMap<string, Decider>;
  readonly logger: Logger;
  /** Told once of each accepted command, before it is answered. What it does is beside the log. */
  readonly onAccepted?: (name: string, data: unknown) => Promise<void>;
}
export const COMMANDS = Symbol('Commands');

/** What a command would append as things stand: decided, and not stored. */
export interface Draft {
  readonly request: AppendRequest;
  /** The streams that the decision rests on. */
  readonly read: StreamsRead;
  readonly now: EpochMs;
}

/** What became of a command: already stored before, stored now, or a problem that stores nothing. */
type Settled =
  | { readonly seen: CommandOutcome }
  | { readonly done: CommandOutcome; readonly appended: Appended }
  | { readonly problem: Problem };

export class Commands {
  readonly #turns = new InTurn();

  constructor(private readonly ports: CommandPorts) {}

  /** Never throws: every way to fail is an answer that says what to do. */
  async handle(request: CommandRequest): Promise<CommandAnswer> {
    try {
      // 1. What is asked, of which ward, and is it complete?
      const { ward, type, decider } = this.#addressed(request);
      const command = validate(type, request.body);
      const [main] = decider.reads(command.data as never, ward);
      // 2. to 6., in turn for one stay, or for all that rest on the whole ward.
      const turn = decider.restsOnAll ? ward : `${ward} ${main?.stream ?? ''}`;
      const settled = await this.#turns.run(turn, () => this.#settle(request, ward, command, decider));
      if ('done' in settled && settled.done.outcome === 'accepted') await this.#tell(request, command);
      // 7. Answer when the board shows it, or after a second.
      return await this.#answer(settled);
    } catch (error) {
      if (error instanceof Answered) return { problem: error.answer };
      this.ports.logger.error({ ward: request.ward, command: request.name, err: error }, 'command broken');
      return { problem: broken() };
    }
  }

  /**
   * The same recipe up to the decision: what the command would append if it were sent now. Writes
   * nothing, not even its outcome, so a refusal here binds nobody. Never throws.
   */
  async draft(request: CommandRequest): Promise<Draft | { readonly problem: Problem }> {
    try {
      const { ward, type, decider } = this.#addressed(request);
      const command = validate(type, request.body);
      const read = await this.#read(ward, decider, command);
      const { voice, said } = await this.#said(request, ward, command, read);
      const decided =
        'problem' in voice ? voice : this.#decide({ ...said, ...voice }, command, decider, read);
      if ('problem' in decided) return decided;
      const result = decided.command.result as StoredResult;
      if (isRefusal(result)) return refused(command.envelope.commandId, result, false);
      return { request: decided, read, now: this.ports.clock.now() };
    } catch (error) {
      if (error instanceof Answered) return { problem: error.answer };
      this.ports.logger.error({ ward: request.ward, command: request.name, err: error }, 'draft broken');
      return { problem: broken() };
    }
  }

  async #settle(
    request: CommandRequest,
    ward: WardId,
    command: ValidCommand,
    decider: Decider,
  ): Promise<Settled> {
    for (let again = 0; ; again++) {
      // 2. Read the streams the decision rests on, and settle who says it.
      const read = await this.#read(ward, decider, command);
      const { voice, said } = await this.#said(request, ward, command, read);

      // 3. When it happened, 4. is it still what the person saw, 5. decide.
      const decided =
        'problem' in voice ? voice : this.#decide({ ...said, ...voice }, command, decider, read);
      if ('problem' in decided) return (await this.#seenBefore(said)) ?? decided;

      try {
        // 6. Append the events with the outcome, all or nothing, once.
        const { appended, seen } = await store(this.ports.log, decided);
        return seen ? { seen: sameCommand(said, seen) } : { done: decided.command, appended };
      } catch (error) {
        if (!(error instanceof VersionConflict)) throw error;
        const itsOwn = !(error instanceof RestsOnPast) && command.envelope.expect !== 'latest';
        if (itsOwn || again === DECIDE_AGAIN) {
          return { problem: conflict(command.envelope) };
        }
      }
    }
  }

  #addressed({ ward, name }: CommandRequest): { ward: WardId; type: CommandType; decider: Decider } {
    const type = COMMAND_TYPES.get(name);
    const decider = this.ports.deciders.get(name);
    if (!type || !decider) throw new Answered(noSuchCommand(name));
    const id = wardId.safeParse(ward);
    if (!id.success) throw new Answered(noSuchWard(ward));
    return { ward: id.data, type, decider };
  }

  #read(ward: WardId, decider: Decider, command: ValidCommand): Promise<StreamsRead> {
    const data = command.data as never;
    return availableOrAnswered(async () => {
      const needs = [...decider.reads(data, ward), { ward, stream: streamKey('ward', ward) }];
      let read = await this.ports.streams.read(needs);
      for (const more of decider.further ?? []) {
        needs.push(...more(data, ward, read));
        read = await this.ports.streams.read(needs);
      }
      return read;
    });
  }

  async #said(request: CommandRequest, ward: WardId, { envelope, data }: ValidCommand, read: StreamsRead) {
    const { name, claim, own, deviceClock } = request;
    const { state } = read.ward(ward);
    if (!state && name !== setUpWard.name) throw new Answered(noSuchWard(ward));
    const voice = own ? plainly(own) : await this.ports.authors.authorOf(claim, name, ward, state);
    const staff = 'problem' in voice ? this.ports.authors.claimed(claim) : voice.author.staff;
    const hash = bodyHash(ward, name, envelope, data);
    const said: Said = {
      ward,
      name,
      envelope,
      hash,
      staff,
      ...(deviceClock === undefined ? {} : { deviceClock }),
    };
    return { voice, said };
  }

  #decide(
    said: Authored,
    command: ValidCommand,
    decider: Decider,
    read: StreamsRead,
  ): AppendRequest | { readonly problem: Problem } {
    const { ward, envelope, author, entitled, deviceClock } = said;
    const { state } = read.ward(ward);
    const now = this.ports.clock.now();
    const occurred = whenItOccurred({
      envelope,
      zone: state?.zone ?? null,
      now,
      ...(deviceClock === undefined ? {} : { deviceClock }),
    });
    if ('problem' in occurred) return occurred;

    const main = decider.reads(command.data as never, ward)[0];
    if (envelope.expect !== 'latest' && main) {
      const { version } = read.slice(main.ward, main.stream);
      if (version !== envelope.expect.version) return { problem: conflict(envelope, version) };
    }

    const { context, texts } = decideContext({
      wardId: ward,
      read,
      now,
      occurred,
      fromOutbox: envelope.fromOutbox,
      author,
      entitled,
    });
    const decision = decider.decide(command.data as never, context);
    if (isRefusal(decision)) return refusedOutcome(said, decision);
    const events = eventsToAppend(said, occurred, decision.accept, read);
    const restsOn = decider.restsOnAll && events.length > 0 ? read.versions(ward) : [];
    return { command: acceptedOutcome(said, occurred, events), events, texts, restsOn };
  }

  /** A repeat is answered from what is stored, even when the same command would fail today. */
  async #seenBefore(said: Said): Promise<Settled | null> {
    const { ward, envelope } = said;
    const seen = await availableOrAnswered(() => this.ports.log.outcomeOf(ward, envelope.commandId));
    return seen && { seen: sameCommand(said, seen) };
  }

  async #answer(settled: Settled): Promise<CommandAnswer> {
    if ('problem' in settled) return settled;
    const repeated = 'seen' in settled;
    const outcome = repeated ? settled.seen : settled.done;
    const { ward, commandId } = outcome;
    const last = new Map(
      repeated
        ? [[ward, settled.seen.position ?? 0]]
        : settled.appended.events.map((event) => [event.ward, event.position]),
    );
    if (!repeated) this.#note(outcome, settled.appended);
    const result = outcome.result as StoredResult;
    if (isRefusal(result)) return refused(commandId, result, repeated);
    const shown = await Promise.all(
      [...last].map(([where, position]) => this.ports.boards.waitFor(where, position, SHOWN_WITHIN_MS)),
    );
    return accepted(commandId, result, {
      position: last.get(ward) ?? 0,
      shown: shown.every(Boolean),
      repeated,
    });
  }

  /** The entry is stored: what fails here must not make it look as if it were not. */
  async #tell({ ward, name }: CommandRequest, { data }: ValidCommand): Promise<void> {
    try {
      await this.ports.onAccepted?.(name, data);
    } catch (error) {
      this.ports.logger.error({ ward, command: name, err: error }, 'after an accepted command');
    }
  }

  #note({ ward, name, commandId, outcome }: CommandOutcome, { events }: Appended): void {
    this.ports.logger.info({ ward, command: name, id: commandId, outcome, events: events.length }, 'command');
  }
}
