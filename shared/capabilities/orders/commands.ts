import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { opaqueId, stayId, staffId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { holdReason, holdScope, order, recordedTriggerKind } from './values.ts';

export const recordTrigger = commandType(
  'record-trigger',
  'Something happened that ends trust in the plan early. Anyone may record it.',
  z.strictObject({ stay: stayId, kind: recordedTriggerKind, note: freeText.optional() }),
);
export const changeOrder = commandType(
  'change-order',
  "Transcribe a prescriber's order; the old plan stops being current at once.",
  z.strictObject({ stay: stayId, order, orderedBy: z.string().trim().min(1).max(120).optional() }),
);
export const placeHold = commandType(
  'place-hold',
  'Stop a named scope for a reason, with an owner and a review time. An aide may place one; review is then asked within 1 h.',
  z.strictObject({
    stay: stayId,
    hold: opaqueId,
    scope: holdScope,
    reason: holdReason,
    owner: staffId.optional(),
    reviewAt: isoInstant.optional(),
    note: freeText.optional(),
  }),
);
export const renewHold = commandType(
  'renew-hold',
  'A qualified person reviewed the hold and keeps it.',
  z.strictObject({ stay: stayId, hold: opaqueId, reviewAt: isoInstant }),
);
export const endHold = commandType(
  'end-hold',
  'A qualified person ends the hold.',
  z.strictObject({ stay: stayId, hold: opaqueId }),
);
export const orderCommands = [recordTrigger, changeOrder, placeHold, renewHold, endHold] as const;
