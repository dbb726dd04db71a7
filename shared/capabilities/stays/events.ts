import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { bedId, opaqueId, personId, stayId, textRef, wardId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { attachmentKind, fence, usualWay, wallShowing, weight } from './values.ts';

export const stayBegun = eventType('stay-begun', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    stay: stayId,
    person: personId,
    bed: bedId,
    /** Name and identifiers, encrypted under this stay's key. */
    identity: textRef.optional(),
    from: z.enum(['home', 'emergency', 'ward', 'theatre', 'intensive-care', 'other']),
    previous: z.strictObject({ ward: wardId, stay: stayId }).optional(),
  }),
  words: (p, n) => `Arrived in bed ${n.bed(p.bed)} (from ${p.from.replace('-', ' ')})`,
});

export const stayMoved = eventType('stay-moved', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    from: bedId,
    to: bedId,
    /** Set when two people changed beds in one act. */
    swappedWith: stayId.optional(),
  }),
  words: (p, n) =>
    p.swappedWith
      ? `Swapped from bed ${n.bed(p.from)} to bed ${n.bed(p.to)}`
      : `Moved from bed ${n.bed(p.from)} to bed ${n.bed(p.to)}`,
});

export const stayEnded = eventType('stay-ended', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    bed: bedId,
    to: z.enum(['home', 'ward', 'facility', 'died', 'other']),
    next: z.strictObject({ ward: wardId, stay: stayId }).optional(),
  }),
  words: (p) => (p.to === 'died' ? 'Died' : `Left the ward (to ${p.to})`),
});

export const wentOffWard = eventType('went-off-ward', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    reason: z.enum(['test', 'theatre', 'dialysis', 'home-visit', 'other']),
    dueBack: isoInstant.optional(),
  }),
  words: (p, n) =>
    `Off the ward (${p.reason.replace('-', ' ')})${p.dueBack ? `, due back ${n.time(p.dueBack)}` : ''}`,
});
export const cameBack = eventType('came-back', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({}),
  words: () => 'Back on the ward',
});

export const usualWayRecorded = eventType('usual-way-recorded', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ usual: usualWay, wish: textRef.optional() }),
  words: (p, n) =>
    `Usual way of moving: ${p.usual.moves === 'walks' ? 'walks' : p.usual.moves}, transfers ${p.usual.transfers}` +
    (p.wish ? `. Wish: ${n.text(p.wish)}` : ''),
});

export const weightRecorded = eventType('weight-recorded', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ weight }),
  words: (p) => `Weight ${p.weight.kg} kg (${p.weight.how})`,
});

export const attachmentAdded = eventType('attachment-added', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    attachment: opaqueId,
    kind: attachmentKind,
    disconnects: z.enum(['nobody', 'nurse', 'anyone-trained']),
    tetherMetres: z.number().min(0).max(20).optional(),
    needsOwnPerson: z.boolean().default(false),
  }),
  rank: 1,
  words: (p) =>
    `Attached: ${p.kind.replaceAll('-', ' ')}; disconnects: ${p.disconnects.replaceAll('-', ' ')}` +
    (p.tetherMetres === undefined ? '' : `; reach ${p.tetherMetres} m`) +
    (p.needsOwnPerson ? '; needs a person to itself' : ''),
});
export const attachmentRemoved = eventType('attachment-removed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ attachment: opaqueId, kind: attachmentKind }),
  rank: -1,
  words: (p) => `Removed: ${p.kind.replaceAll('-', ' ')}`,
});

/** Which plan applies at all: the staged check, the clinician's own plan, or comfort. */
export const scopeSet = eventType('scope-set', {
  stream: 'stay',
  version: 1,
  schema: z.discriminatedUnion('scope', [
    z.strictObject({ scope: z.literal('staged') }),
    z.strictObject({ scope: z.literal('clinicians-plan'), fence, plan: textRef }),
    z.strictObject({ scope: z.literal('comfort'), plan: textRef.optional() }),
  ]),
  rank: (p) => (p.scope === 'staged' ? -1 : 1),
  words: (p, n) =>
    p.scope === 'staged'
      ? 'The staged check applies'
      : p.scope === 'comfort'
        ? 'Comfort plan'
        : `Clinician's plan only (${p.fence.replaceAll('-', ' ')}): ${n.text(p.plan)}`,
});

/** What the person wishes walls to say of them. Of two at one instant the more private stands. */
export const wallShowingSet = eventType('wall-showing-set', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ showing: wallShowing }),
  rank: (p) => (p.showing === 'nothing' ? 1 : -1),
  words: (p) =>
    p.showing === 'nothing'
      ? 'Walls show nothing of the person'
      : 'Walls show the person as they show everybody',
});

/** Steps against spreading an infection apply in the room: lifts and aids are cleaned before they leave it. Says no reason. */
export const isolationSet = eventType('isolation-set', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ on: z.boolean() }),
  words: (p) => (p.on ? 'Infection steps apply in the room' : 'No infection steps in the room any more'),
});

/** When the person is expected to leave the ward; null takes the expectation back. Ends nothing by itself. */
export const leavingExpected = eventType('leaving-expected', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ at: isoInstant.nullable() }),
  words: (p, n) => (p.at === null ? 'No longer expected to leave' : `Expected to leave ${n.time(p.at)}`),
});

/** One line of a nurse or therapist for whoever moves the person, shown at the bedside only; left out, it is taken down. */
export const therapistLineSet = eventType('therapist-line-set', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ line: textRef.optional() }),
  words: (p, n) => (p.line ? `Line for the bedside: ${n.text(p.line)}` : 'Line for the bedside taken down'),
});

export const stayEvents = [
  stayBegun,
  stayMoved,
  stayEnded,
  wentOffWard,
  cameBack,
  usualWayRecorded,
  weightRecorded,
  attachmentAdded,
  attachmentRemoved,
  scopeSet,
  wallShowingSet,
  isolationSet,
  leavingExpected,
  therapistLineSet,
] as const;
