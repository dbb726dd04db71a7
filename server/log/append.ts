import type { Database } from '../platform/database.ts';
import { refusalOf } from '../platform/database-errors.ts';
import type { Sealed, Sealer } from '../vault/sealer.ts';
import { canonical, hashText } from './canonical.ts';
import { SubjectErased, asAppendError } from './errors.ts';
import type { WardGate } from './gate.ts';
import { CommandSeen, RestsOnPast, VersionConflict } from './log.ts';
import type { AppendRequest, Appended, CommandOutcome, EventToAppend } from './log.ts';

/** A silent database is an unknown outcome, not a person waiting for ever. */
const ANSWER_WITHIN_MS = 15_000;
/** Another process made the subject's key a moment before us: seal again under that one. */
const SEAL_TRIES = 3;

const call = (name: string, parameters: number): string =>
  `select ward, first_position, recorded from ${name}(${Array.from({ length: parameters }, (_, i) => `$${i + 1}`).join(', ')})`;
const APPEND = call('footboard_append', 30);
const APPEND_RESTING = call('footboard_append_resting', 32);

interface Ready {
  readonly event: EventToAppend;
  /** Its place in the request. */
  readonly at: number;
  readonly payload: string;
  readonly payloadHash: string;
}
interface WardShare {
  readonly ward: string;
  readonly events: Ready[];
}

/** Events by ward, wards in ascending order, order kept within each. Serialised and hashed before any lock. */
function sharesOf(events: readonly EventToAppend[]): readonly WardShare[] {
  const shares = new Map<string, Ready[]>();
  events.forEach((event, at) => {
    const payload = canonical(event.payload);
    const ready = { event, at, payload, payloadHash: hashText(payload) };
    const share = shares.get(event.ward);
    if (share) share.push(ready);
    else shares.set(event.ward, [ready]);
  });
  return [...shares]
    .map(([ward, ready]) => ({ ward, events: ready }))
    .toSorted((a, b) => (a.ward < b.ward ? -1 : 1));
}

function parametersOf(command: CommandOutcome, shares: readonly WardShare[], sealed: Sealed): unknown[] {
  const all = shares.flatMap((share) => share.events);
  const own = shares.find((share) => share.ward === command.ward);
  const each = <T>(pick: (ready: Ready) => T): T[] => all.map(pick);
  return [
    command.ward,
    command.commandId,
    command.name,
    command.bodyHash,
    command.author.staff,
    command.author.role,
    command.outcome,
    canonical(command.result),
    own?.events.at(-1)?.event.id ?? null,
    shares.map((share) => share.ward),
    shares.map((share) => share.events.length),
    each((r) => r.event.stream),
    each((r) => r.event.version),
    each((r) => r.event.id),
    each((r) => r.event.type),
    each((r) => r.event.schemaVersion),
    each((r) => r.payload),
    each((r) => r.payloadHash),
    each((r) => r.event.occurred),
    each((r) => r.event.precision),
    each((r) => r.event.entered),
    each((r) => r.event.enteredOffsetMinutes),
    each((r) => r.event.author.staff),
    each((r) => r.event.author.role),
    each((r) => canonical(r.event.source)),
    sealed.newKeys.map((key) => key.subject),
    sealed.newKeys.map((key) => key.wrapped),
    sealed.texts.map((text) => text.ref),
    sealed.texts.map((text) => text.subject),
    sealed.texts.map((text) => text.ciphertext),
  ];
}

export interface AppendParts {
  readonly database: Database;
  readonly gate: WardGate;
  readonly sealer: Sealer;
  readonly outcomeOf: (ward: string, commandId: string) => Promise<CommandOutcome | null>;
}

/**
 * 1 serialise and hash. 2 seal the texts. 3 wait for the wards' turn. 4 one statement does the rest.
 * @throws VersionConflict, RestsOnPast, CommandSeen, SubjectErased, OutcomeUnknown, LogUnavailable
 */
export async function append(parts: AppendParts, request: AppendRequest): Promise<Appended> {
  const { command, events, texts = [], restsOn = [] } = request;
  const shares = sharesOf(events);
  const wards = shares.map((share) => share.ward);
  for (let left = SEAL_TRIES; ; left--) {
    try {
      const sealed = await parts.sealer.seal(texts);
      const rows = await parts.gate.through(wards, () =>
        parts.database.query<{ ward: string; first_position: number; recorded: number }>(
          restsOn.length > 0 ? APPEND_RESTING : APPEND,
          [
            ...parametersOf(command, shares, sealed),
            ...(restsOn.length > 0 ? [restsOn.map((r) => r.stream), restsOn.map((r) => r.version)] : []),
          ],
          { ms: ANSWER_WITHIN_MS },
        ),
      );
      parts.sealer.sealed(sealed);
      return { events: placesOf(shares, rows, events.length) };
    } catch (error) {
      const refusal = refusalOf(error);
      if (!refusal) throw asAppendError(error);
      const { code, constraint } = refusal;
      if (code === '23505' && constraint === 'command_outcome_pkey') {
        const stored = await parts.outcomeOf(command.ward, command.commandId);
        if (stored) throw new CommandSeen(stored);
      }
      if (code === '23505' && constraint === 'event_stream_version') {
        const streams = [...new Set(events.map((event) => event.stream))].join(', ');
        throw new VersionConflict(command.ward, streams);
      }
      if (code === '23505' && constraint === 'text_key_pkey' && left > 1) {
        parts.sealer.forget(texts.map((text) => text.subject));
        continue;
      }
      if (code === 'FB004') throw new RestsOnPast(command.ward);
      if (code === 'FB001') {
        const subjects = [...new Set(texts.map((text) => text.subject))];
        parts.sealer.forget(subjects);
        throw new SubjectErased(subjects);
      }
      throw error;
    }
  }
}

/** Positions within a ward are contiguous, so the first one of each ward says them all. */
function placesOf(
  shares: readonly WardShare[],
  rows: readonly { ward: string; first_position: number; recorded: number }[],
  count: number,
): Appended['events'] {
  const places = Array.from<Appended['events'][number]>({ length: count });
  const first = new Map(rows.map((row) => [row.ward, row]));
  for (const share of shares) {
    const row = first.get(share.ward)!;
    share.events.forEach((ready, n) => {
      places[ready.at] = {
        ward: ready.event.ward,
        position: row.first_position + n,
        recorded: row.recorded,
      };
    });
  }
  return places;
}
