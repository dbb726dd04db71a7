/** What two people agree about a visit, and which list somebody had before them when they acted on it. */
import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { opaqueId, staffId } from '../../kernel/ids.ts';
import { insteadReason, listAct, listSeen } from './values.ts';

const plain = (code: string): string => code.replaceAll('-', ' ');

/** Somebody goes along as the second person; whoever did before does not any more. */
export const secondNamed = eventType('second-named', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ visit: opaqueId, second: staffId }),
  words: (p, n) => `Next visit: ${n.staff(p.second)} goes along`,
});

/** The second person cannot: the visit stays with whoever has it, and needs a second person again. */
export const secondGaveBack = eventType('second-gave-back', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ visit: opaqueId, second: staffId }),
  words: (p, n) => `Next visit: ${n.staff(p.second)} cannot go along, a second person is needed`,
});

/**
 * The round's list was acted on. With the position, the instant and the weights the same list can be
 * made again from the log; its hash tells whether it is the same. Lies beside the entry it belongs to.
 */
export const listActedOn = eventType('list-acted-on', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    act: listAct,
    visit: opaqueId.optional(),
    list: listSeen,
    /** Given where whoever was taken was not the first. */
    instead: insteadReason.optional(),
  }),
  words: (p, n) =>
    `Round: ${plain(p.act)}, by the list of ${n.time(p.list.at)}${p.instead ? `, not the first on it (${plain(p.instead)})` : ''}`,
});

export const roundEvents = [secondNamed, secondGaveBack, listActedOn] as const;
