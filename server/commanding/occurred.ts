/** Step 2 of the recipe: when it happened, judged against the server's clock and the ward's zone. */
import type { CommandEnvelope } from '@footboard/shared/kernel/command-type';
import { MINUTE, toEpoch, toIso } from '@footboard/shared/kernel/times';
import type { EpochMs, Precision } from '@footboard/shared/kernel/times';
import { resolveLocal, sayDayTime } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from './problems.ts';

/** Design, time from devices: this much ahead is a clock's inaccuracy and is taken as now. */
const AHEAD_TAKEN_AS_NOW = 2 * MINUTE;

export interface OccurredQuestion {
  readonly envelope: Pick<CommandEnvelope, 'occurred' | 'entered' | 'fromOutbox'>;
  /** IANA zone of the ward; null before it is set up. */
  readonly zone: string | null;
  readonly now: EpochMs;
  /** The device's clock when the request left, if it said so: a better measure than the time of entry. */
  readonly deviceClock?: EpochMs;
}
export interface Occurred {
  readonly at: EpochMs;
  readonly precision: Precision;
  /** The time as entered, when another one was taken. */
  readonly asEntered?: EpochMs;
}

/** A problem is `time-in-future`, `skipped-hour`, `repeated-hour` or `invalid-command`. */
export function whenItOccurred(question: OccurredQuestion): Occurred | { readonly problem: Problem } {
  const { envelope, now } = question;
  const instant = asInstant(question);
  if ('problem' in instant) return instant;
  const { at, pointer } = instant;
  const { precision } = envelope.occurred;
  if (at <= now) return { at, precision };
  if (at <= now + AHEAD_TAKEN_AS_NOW) return { at: now, precision };

  const ahead = (question.deviceClock ?? toEpoch(envelope.entered.at)) - now;
  if (envelope.fromOutbox && ahead > 0) {
    const shifted = at - ahead;
    if (shifted <= now + AHEAD_TAKEN_AS_NOW) {
      return { at: Math.min(shifted, now), precision: 'about', asEntered: at };
    }
  }
  const zone = question.zone ?? 'UTC';
  const detail =
    `The entry says ${sayDayTime(zone, at)}. The server's clock says ${sayDayTime(zone, now)}; ` +
    `this device's clock said ${sayDayTime(zone, toEpoch(envelope.entered.at))}.`;
  const remedy =
    ahead > AHEAD_TAKEN_AS_NOW
      ? "Set the device's clock right, or enter the time by the server's clock."
      : 'Enter when it happened; what is still to come cannot be recorded.';
  return { problem: problem('time-in-future', detail, remedy, { errors: [{ pointer, detail, remedy }] }) };
}

function asInstant({
  envelope,
  zone,
}: OccurredQuestion): { at: EpochMs; pointer: string } | { problem: Problem } {
  const { occurred } = envelope;
  if ('at' in occurred) return { at: toEpoch(occurred.at), pointer: '/occurred/at' };
  const pointer = '/occurred/local';
  if (zone === null) {
    const detail = 'The ward has no clock yet.';
    const remedy = 'Send the instant in "occurred.at", in UTC.';
    return { problem: problem('invalid-command', detail, remedy, { errors: [{ pointer, detail, remedy }] }) };
  }
  const resolved = resolveLocal(zone, occurred.local, occurred.repeated);
  if ('at' in resolved) return { at: resolved.at, pointer };
  const { refused, detail, remedy } = resolved;
  const field = refused === 'repeated-hour' ? '/occurred/repeated' : pointer;
  return { problem: problem(refused, detail, remedy, { errors: [{ pointer: field, detail, remedy }] }) };
}

/** What the answer tells about a time that was not taken as entered. */
export const timeTaken = (occurred: Occurred) =>
  occurred.asEntered === undefined
    ? {}
    : {
        timeTaken: {
          asEntered: toIso(occurred.asEntered),
          taken: toIso(occurred.at),
          precision: occurred.precision,
        },
      };
