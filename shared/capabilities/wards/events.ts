import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { bedId, stayId } from '../../kernel/ids.ts';
import { clockTime, ianaZone, label, language, panel, units } from './values.ts';

export const wardSetUp = eventType('ward-set-up', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    name: label,
    zone: ianaZone,
    /** The ward day runs from this time to the same time next day, on the ward's clock. */
    wardDayFrom: clockTime,
    nightFrom: clockTime,
    nightTo: clockTime,
  }),
  words: (p) => `Ward ${p.name} set up; clock ${p.zone}, ward day from ${p.wardDayFrom}`,
});

export const wardChanged = eventType('ward-changed', {
  stream: 'ward',
  version: 2,
  // Version 1 knew no panel, units or language.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({
    name: label.optional(),
    zone: ianaZone.optional(),
    wardDayFrom: clockTime.optional(),
    nightFrom: clockTime.optional(),
    nightTo: clockTime.optional(),
    panel: panel.optional(),
    units: units.optional(),
    language: language.optional(),
  }),
  words: ({ panel: of, units: written, ...others }) =>
    `Ward changed: ${[
      ...Object.entries(others).map(([k, v]) => `${k} ${v}`),
      ...(of ? [`panel ${of.inches} inches read from ${of.metres} m`] : []),
      ...(written ? [`units ${written.weight} and ${written.length}`] : []),
    ].join(', ')}`,
});

export const bedAdded = eventType('bed-added', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ bed: bedId, label, bay: label, ceilingTrack: z.boolean() }),
  words: (p) => `Bed ${p.label} added in ${p.bay}${p.ceilingTrack ? ', with a ceiling track' : ''}`,
});

export const bedChanged = eventType('bed-changed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    bed: bedId,
    label: label.optional(),
    bay: label.optional(),
    ceilingTrack: z.boolean().optional(),
  }),
  words: (p, n) => `Bed ${n.bed(p.bed)} changed`,
});

export const bedClosed = eventType('bed-closed', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ bed: bedId }),
  words: (p, n) => `Bed ${n.bed(p.bed)} taken off the ward's list`,
});

/** The bed's own guard stream: one person in a bed, judged by the stream's version. */
export const bedTaken = eventType('bed-taken', {
  stream: 'bed',
  version: 1,
  schema: z.strictObject({ bed: bedId, stay: stayId }),
  words: (p, n) => `Bed ${n.bed(p.bed)} taken`,
});

export const bedFreed = eventType('bed-freed', {
  stream: 'bed',
  version: 1,
  schema: z.strictObject({ bed: bedId, stay: stayId }),
  words: (p, n) => `Bed ${n.bed(p.bed)} freed`,
});

/**
 * The guard's last word, in one act with `bed-closed`: an arrival decided at the same time loses by the
 * stream's version, so that nobody can lie in a bed the board no longer shows.
 */
export const bedWithdrawn = eventType('bed-withdrawn', {
  stream: 'bed',
  version: 1,
  schema: z.strictObject({ bed: bedId }),
  words: (p, n) => `Bed ${n.bed(p.bed)} withdrawn`,
});

/**
 * A ward's own protocol document. The document is checked by the assessments room before it gets
 * here (`protocolDocument`); the event keeps it whole so that an old assessment stays readable.
 */
export const protocolPublished = eventType('protocol-published', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ id: label, version: z.number().int().min(1), document: z.json() }),
  words: (p) => `Protocol ${p.id} version ${p.version} published`,
});

/** The ward's rules document: limits and validities with their source, owner and review date. */
export const rulesPublished = eventType('rules-published', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({ version: z.number().int().min(1), document: z.json() }),
  words: (p) => `Ward rules version ${p.version} published`,
});

export const wardEvents = [
  wardSetUp,
  wardChanged,
  bedAdded,
  bedChanged,
  bedClosed,
  bedTaken,
  bedFreed,
  bedWithdrawn,
  protocolPublished,
  rulesPublished,
] as const;
