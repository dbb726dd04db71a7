/** "The board is wrong": counted, because a board that people find wrong must be seen to be found wrong. */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Period } from '../../wards/context.ts';
import type { triggerRecorded } from '../events.ts';

const saysBoardWrong = (f: Fact): boolean =>
  f.type === 'trigger-recorded' && (f.data as PayloadOf<typeof triggerRecorded>).kind === 'board-wrong';

/** How often it was said on one ward day, among the facts given. */
export const boardWrongIn = (facts: readonly Fact[], day: Period): number =>
  facts.filter((f) => f.occurred >= day.from && f.occurred < day.to && saysBoardWrong(f)).length;
