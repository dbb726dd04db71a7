import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { onOwn } from './values.ts';

export const onOwnSet = eventType('on-own-set', {
  stream: 'stay',
  version: 1,
  schema: onOwn,
  rank: -1,
  words: (p) => `On own set: ${p.where.join(' and ')}, ${p.when.join(' and ')}`,
});
export const onOwnRemoved = eventType('on-own-removed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({}),
  rank: 1,
  words: () => 'On own removed',
});
export const handlingEvents = [onOwnSet, onOwnRemoved] as const;
