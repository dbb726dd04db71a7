/** The next staged check in words: how deep, about how long, and where it begins. */
import type { NextCheckView } from '@footboard/shared/capabilities/board/view';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { say } from '../words.ts';

const DEPTH: Readonly<Record<NextCheckView['depth'], string>> = {
  'full-with-pressure': 'Full, with pressure set',
  full: 'Full',
  confirm: 'Confirm: one ordinary move, watched by a nurse',
};

/** The protocol's word for a stage; its id in plain words where the protocol gives it none or is not the one at hand. */
export const stageWord = (id: string, protocol: Protocol): string =>
  protocol.stages.find((stage) => stage.id === id)?.word ?? say(id);

/** "Full, with pressure set, from Clear"; "Confirm: one ordinary move, watched by a nurse". */
export function nextCheckWords(next: NextCheckView, protocol: Protocol): string {
  const depth = DEPTH[next.depth];
  return next.depth === 'confirm' ? depth : `${depth}, from ${stageWord(next.from, protocol)}`;
}
