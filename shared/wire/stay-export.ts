/**
 * Everything there is about one stay, as one document to hand over. Our own format: `version` grows
 * when a reader of an earlier one would misread it.
 */
import { z } from 'zod';
import { role } from '../kernel/author.ts';
import { commandId, eventId, opaqueId, staffId, stayId, wardId } from '../kernel/ids.ts';
import { precision } from '../kernel/times.ts';

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** An entry in plain words, with everything its link in the ward's chain was made of. */
export const exportedEntry = z.strictObject({
  position: z.number().int(),
  stream: z.string(),
  version: z.number().int(),
  id: eventId,
  type: z.string(),
  schemaVersion: z.number().int(),
  /** As it was stored and hashed: canonical JSON (RFC 8785), free text by reference into `texts`. */
  payload: z.string(),
  payloadHash: hash,
  occurred: z.number(),
  precision,
  entered: z.number(),
  enteredOffsetMinutes: z.number(),
  recorded: z.number(),
  author: z.strictObject({ staff: staffId, role, name: z.string() }),
  /** Canonical JSON. */
  source: z.string(),
  commandId,
  words: z.string(),
  /** False for an entry that was withdrawn: it stays readable and does not count. */
  counts: z.boolean(),
  previous: hash,
  chain: hash,
});

export const stayExport = z.strictObject({
  format: z.literal('footboard-stay-export'),
  version: z.literal(1),
  made: z.strictObject({
    at: z.number(),
    by: z.strictObject({ staff: staffId, name: z.string() }).nullable(),
  }),
  ward: z.strictObject({ ward: wardId, name: z.string(), zone: z.string() }),
  stay: stayId,
  /** Null while the stay goes on. */
  ended: z.number().nullable(),
  /** The key of this stay was destroyed: identity and texts cannot be read by anybody any more. */
  erased: z.boolean(),
  identity: z
    .strictObject({ name: z.string(), recordNumber: z.string().optional(), born: z.string().optional() })
    .nullable(),
  texts: z.record(opaqueId, z.string()),
  /** The same person's stay on another ward, exported there. */
  before: z.strictObject({ ward: wardId, stay: stayId }).nullable(),
  after: z.strictObject({ ward: wardId, stay: stayId }).nullable(),
  /** In the order of the ward's log. */
  entries: z.array(exportedEntry),
  /** The ward's log when this was made: kept elsewhere, it shows later whether the log was cut. */
  anchor: z.strictObject({ position: z.number().int(), chain: hash }),
  howToVerify: z.array(z.string()),
});
export type StayExport = z.infer<typeof stayExport>;
