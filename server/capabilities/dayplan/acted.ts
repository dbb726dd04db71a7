import { listActedOn } from '@footboard/shared/capabilities/dayplan/round-events';
import type { InsteadReason, ListAct, ListSeen } from '@footboard/shared/capabilities/dayplan/values';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { NewEvent } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import { stayStream } from '../stays/standing.ts';

interface Acted {
  readonly stay: StayId;
  readonly visit?: string;
  readonly list?: ListSeen | undefined;
  readonly instead?: InsteadReason | undefined;
}

/** Beside what was done: which list whoever did it had before them. Nothing where they had none. */
export const actedOn = (act: ListAct, { stay, visit, list, instead }: Acted): readonly NewEvent[] =>
  list === undefined
    ? []
    : [
        newEvent(listActedOn, stayStream(stay), {
          act,
          ...(visit === undefined ? {} : { visit }),
          list,
          ...(instead === undefined ? {} : { instead }),
        }),
      ];
