import type { RulesInForce } from '@footboard/shared/wire/documents';
import { sayInside } from '../words.ts';
import { say } from './words.ts';

export interface Weight {
  readonly key: string;
  readonly says: string;
  readonly value: number;
  readonly source: string;
  readonly owner: string;
  readonly reviewBy: string;
}

/** Every number that the round ranks by, in the order of the document. */
export function weightsIn({ round }: RulesInForce['document']): Weight[] {
  const { againAfterMinutes, ...rest } = round;
  return [
    ...Object.entries(rest).map(([key, limit]) => ({ key, says: say(key as keyof typeof rest), ...limit })),
    ...Object.entries(againAfterMinutes).map(([group, limit]) => ({
      key: group,
      says: say('again', { group: sayInside(group) }),
      ...limit,
    })),
  ];
}
