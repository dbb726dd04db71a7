/** The next staged check in words: how deep, about how long, and where it begins. */
import type { NextCheckView } from '@footboard/shared/capabilities/board/moving-view';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { told } from '../../i18n/told.ts';
import { say } from '../words.ts';
import { saySigns } from './signs-words.ts';

const DEPTH = {
  'full-with-pressure': 'full-pressure',
  full: 'full',
  confirm: 'confirm-how',
} as const satisfies Record<NextCheckView['depth'], string>;

/** The protocol's word for a stage; its id in plain words where the protocol gives it none or is not the one at hand. */
export const stageWord = (id: string, protocol: Protocol): string =>
  told(protocol.stages.find((stage) => stage.id === id)?.word ?? '') || say(id);

/** "Full, with pressure set, from Clear"; "Confirm: one ordinary move, watched by a nurse". */
export function nextCheckWords(next: NextCheckView, protocol: Protocol): string {
  const depth = saySigns(DEPTH[next.depth]);
  return next.depth === 'confirm'
    ? depth
    : `${depth}, ${saySigns('from', { stage: stageWord(next.from, protocol) })}`;
}
