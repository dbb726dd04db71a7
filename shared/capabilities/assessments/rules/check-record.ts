import type { DataOf, Refusal } from '../../../kernel/command-type.ts';
import type { recordAssessment } from '../commands.ts';
import type { Protocol } from './protocol.ts';

export function checkAssessment(_protocol: Protocol, _data: DataOf<typeof recordAssessment>): Refusal | null {
  return null;
}
