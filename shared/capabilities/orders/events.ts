import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { eventId, opaqueId, staffId, textRef } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { holdReason, holdScope, order, recordedTriggerKind } from './values.ts';

const plain = (code: string) => code.replaceAll('-', ' ');

export const triggerRecorded = eventType('trigger-recorded', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ kind: recordedTriggerKind, note: textRef.optional() }),
  rank: 1,
  words: (p, n) => `Trigger: ${plain(p.kind)}${p.note ? `. ${n.text(p.note)}` : ''}`,
});

export const orderChanged = eventType('order-changed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ order, orderedBy: textRef.optional() }),
  rank: 1,
  words: (p, n) => {
    const by = p.orderedBy ? ` (ordered by ${n.text(p.orderedBy)})` : '';
    const o = p.order;
    switch (o.about) {
      case 'activity':
        return `Order: activity up to ${plain(o.most)}${by}`;
      case 'weight-bearing': {
        const limit = !o.limit ? '' : 'percent' in o.limit ? `, ${o.limit.percent} %` : `, ${o.limit.kg} kg`;
        return `Order: weight bearing ${plain(o.limb)} ${o.bears}${limit}${by}`;
      }
      case 'precaution':
        return `Order: ${o.precaution} precautions ${o.on ? 'on' : 'off'}${by}`;
      case 'brace':
        return `Order: brace ${o.on ? 'on' : 'off'}${by}`;
      case 'oxygen-target':
        return `Order: oxygen saturation target ${o.low}-${o.high} %${by}`;
    }
  },
});

export const holdPlaced = eventType('hold-placed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    hold: opaqueId,
    scope: holdScope,
    reason: holdReason,
    owner: staffId,
    reviewAt: isoInstant,
    note: textRef.optional(),
  }),
  rank: 1,
  words: (p, n) =>
    `Hold on ${plain(p.scope)} (${plain(p.reason)}), owner ${n.staff(p.owner)}, review ${n.time(p.reviewAt)}` +
    (p.note ? `. ${n.text(p.note)}` : ''),
});
export const holdRenewed = eventType('hold-renewed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ hold: opaqueId, reviewAt: isoInstant }),
  rank: 1,
  words: (p, n) => `Hold renewed, next review ${n.time(p.reviewAt)}`,
});
export const holdEnded = eventType('hold-ended', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ hold: opaqueId, placedBy: eventId }),
  rank: -1,
  words: () => 'Hold ended',
});

export const orderEvents = [triggerRecorded, orderChanged, holdPlaced, holdRenewed, holdEnded] as const;
