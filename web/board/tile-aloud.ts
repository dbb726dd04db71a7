/** What a reader hears of a tile: whole words in the order of their weight, each thing once. */
import type { BedView } from '@footboard/shared/capabilities/board/view';
import { wardDayTime } from './clock.ts';
import { nextPlanned } from './tile-near.ts';
import { sayTile } from './tile-say.ts';
import type { TileContext, TileSays } from './tile.ts';
import { TRUST, tierWord } from './words.ts';

export interface AloudContext extends TileContext {
  readonly changed: number | null;
  readonly initials: string | null;
}

export function wholeSentence(bed: BedView, says: TileSays, context: AloudContext): string {
  const { stay } = bed;
  const time = (at: number) => wardDayTime(at, context.zone, context.now);
  const within = stay !== null && stay.shown !== 'visitors' && stay.shown !== 'ask-at-the-bedside';
  const planned = within ? nextPlanned(stay, context.now) : null;
  const staged = within && stay.scope.kind === 'staged';
  const end = within ? stay.holds.find((hold) => !hold.reviewDue && hold.reviewAt > 0) : undefined;
  const parts = [
    ...says.first,
    ...says.held,
    says.wait && sayTile('wait-line', { plan: says.wait }),
    says.beside,
    end && sayTile('hold-ends', { time: time(end.reviewAt) }),
    says.trust && (context.old ? sayTile('last-known') : TRUST[says.trust]),
    staged && stay.tier.word !== null && sayTile('tier', { word: tierWord(stay.tier.word) }),
    staged && stay.tier.at !== null && sayTile('check-of', { time: time(stay.tier.at) }),
    says.lastUp,
    says.today && sayTile('today', { words: says.today }),
    says.due.words,
    says.also,
    says.sign,
    within &&
      planned &&
      sayTile(planned.stopped ? 'planned-held' : 'planned-visit', { time: time(planned.from) }),
    within &&
      !planned &&
      stay.visit &&
      sayTile(stay.visit.from <= context.now && !context.old ? 'visit-since' : 'next-visit', {
        time: time(stay.visit.from),
      }),
    within && stay.isolation && sayTile('isolation'),
    context.changed !== null && sayTile('changed', { time: time(context.changed) }),
    context.initials && sayTile('initials', { letters: context.initials }),
  ];
  // A part may end in the point of an abbreviation.
  return `${parts
    .filter(Boolean)
    .map((part) => String(part).replace(/\.$/, ''))
    .join('. ')}.`;
}
