/** Parts of an address that several controllers read. */
import { stayId, wardId } from '@footboard/shared/kernel/ids';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';

export const invalidQuery = (pointer: string, detail: string, remedy: string): Answered =>
  new Answered(problem('invalid-query', detail, remedy, { errors: [{ pointer, detail, remedy }] }));

/** @throws Answered invalid-query */
export function stayNamed(text: string): StayId {
  const id = stayId.safeParse(text);
  if (!id.success)
    throw invalidQuery('/stay', 'That is not the id of a stay.', 'Open the stay from the board.');
  return id.data;
}

/** @throws Answered no-such-ward */
export function wardNamed(text: string): WardId {
  const id = wardId.safeParse(text);
  if (!id.success) throw new Answered(noSuchWard(text));
  return id.data;
}
