import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { bedId, opaqueId, staffId, stayId, textRef, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { usualWay } from '../stays/values.ts';
import { roundEvents } from './round-events.ts';
import { actionKind, actionOutcome, arrivalFrom, giveBackReason } from './values.ts';

const plain = (code: string): string => code.replaceAll('-', ' ');
const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Somebody goes to see the person next. Until `until`, or a session is recorded, or it is given back, it is theirs. */
export const visitTaken = eventType('visit-taken', {
  stream: 'stay',
  version: 2,
  // Version 1 had nowhere to say who was asked first.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({
    visit: opaqueId,
    by: staffId,
    second: staffId.optional(),
    from: isoInstant,
    until: isoInstant,
    /** Who was asked before going, where a nurse is to be asked first. */
    asked: staffId.optional(),
  }),
  words: (p, n) =>
    `Next visit taken by ${n.staff(p.by)}${p.second ? ` with ${n.staff(p.second)}` : ''}, ${n.time(p.from)} to ${n.time(p.until)}${p.asked ? `; asked first: ${n.staff(p.asked)}` : ''}`,
});

/** Handed to somebody else, who has it from now on. */
export const visitHandedOver = eventType('visit-handed-over', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ visit: opaqueId, to: staffId }),
  words: (p, n) => `Next visit handed to ${n.staff(p.to)}`,
});

export const visitGivenBack = eventType('visit-given-back', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ visit: opaqueId, reason: giveBackReason }),
  words: (p) => `Next visit given back (${plain(p.reason)})`,
});

/** The morning review was held: what changes after it is what the next one asks about. */
export const huddleHeld = eventType('huddle-held', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({}),
  words: () => 'Huddle held',
});

/** Agreed at a huddle, or agreed anew with another owner or time (the same `action`). */
export const actionAgreed = eventType('action-agreed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    action: opaqueId,
    kind: actionKind,
    owner: staffId,
    by: isoInstant,
    /** Whom it is about; left out, it is about the ward. */
    stay: stayId.optional(),
    /** Under the stay's key, or the owner's where it is about the ward. */
    note: textRef.optional(),
  }),
  words: (p, n) =>
    `Agreed: ${plain(p.kind)}, ${n.staff(p.owner)}, by ${n.time(p.by)}${p.note ? ` (${n.text(p.note)})` : ''}`,
});

export const actionClosed = eventType('action-closed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ action: opaqueId, outcome: actionOutcome }),
  words: (p) => `Agreed action closed: ${plain(p.outcome)}`,
});

/** Who looks after which bed until `until`. A bed that is not named keeps who it had; null takes a name back. */
export const carersNamed = eventType('carers-named', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    until: isoInstant,
    beds: z
      .array(z.strictObject({ bed: bedId, nurse: staffId.nullable(), aide: staffId.nullable() }))
      .min(1)
      .max(60),
  }),
  words: (p, n) =>
    `Named until ${n.time(p.until)}: ${p.beds
      .map(
        (one) =>
          `bed ${n.bed(one.bed)} ${[one.nurse, one.aide].flatMap((who) => (who ? [n.staff(who)] : [])).join(' and ') || 'nobody'}`,
      )
      .join('; ')}`,
});

/** Somebody is expected. What is said of how they move is history, not confirmed here. No name: there is no stay yet. */
export const arrivalExpected = eventType('arrival-expected', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    expected: opaqueId,
    at: isoInstant,
    from: arrivalFrom,
    bed: bedId.optional(),
    usual: usualWay.optional(),
    /** The stay on another ward of this board that they come from: its plan is shown as history. */
    previous: z.strictObject({ ward: wardId, stay: stayId }).optional(),
    /** From 136 kg, as told: the equipment must be ready. */
    bariatric: z.boolean().default(false),
  }),
  words: (p, n) =>
    `${sentence(plain(p.from))}: arrival expected ${n.time(p.at)}${p.bed ? `, bed ${n.bed(p.bed)}` : ''}`,
});

export const expectedArrivalClosed = eventType('expected-arrival-closed', {
  stream: 'ward',
  version: 2,
  // Version 1 did not say whose stay began with it.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({
    expected: opaqueId,
    outcome: z.enum(['arrived', 'not-coming']),
    /** The stay that began in the same act. */
    stay: stayId.optional(),
  }),
  words: (p) => `Expected arrival: ${plain(p.outcome)}`,
});

export const dayplanEvents = [
  visitTaken,
  visitHandedOver,
  visitGivenBack,
  huddleHeld,
  actionAgreed,
  actionClosed,
  carersNamed,
  arrivalExpected,
  expectedArrivalClosed,
  ...roundEvents,
] as const;
