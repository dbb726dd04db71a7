/** Ward days on which the most that was seen stays below the person's usual way of moving. */
import type { EventId } from '../../../kernel/ids.ts';
import type { StageMeaning } from '../../assessments/rules/protocol.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import { isCheck } from '../../orders/rules/triggers.ts';
import { reaches, showsAsMuch, showsMost } from '../../sessions/rules/activities.ts';
import type { Activity } from '../../sessions/values.ts';
import type { UsualWay } from '../../stays/values.ts';
import type { Period } from '../../wards/context.ts';
import type { SignView } from '../activity-view.ts';
import type { SignsInput } from './signs-input.ts';

/** What shows the usual way of moving; null for someone who lived in bed. Ours, practice. */
function baselineOf(usual: UsualWay): Activity | null {
  if (usual.moves === 'bed') return null;
  if (usual.transfers === 'lifted') return 'lifted-to-chair';
  return usual.moves === 'wheelchair' ? 'chair' : 'walk';
}

/** The most that one ward day shows, with its fact; null when nothing was seen or done. */
interface Seen {
  readonly activity: Activity;
  readonly fact: EventId;
  readonly reached: boolean;
}

/**
 * Counts whole ward days back from yesterday while the person was here all day. A day with nothing
 * seen or done is a gap: it counts nothing and breaks nothing, and is said. Today can only end it.
 */
export function belowUsualWay(input: SignsInput): SignView | null {
  const { t, calendar, rules, standing, note } = input;
  const { usualWay, usualWayFact, began } = standing;
  const needed = rules.signs.daysBelowBaseline.value;
  const baseline = usualWay && baselineOf(usualWay);
  if (!baseline || !usualWayFact || began === null) return null;
  const today = calendar.wardDay(t);
  note(today.to);
  const days = new Days(input, baseline);
  if (days.best(today)?.reached) return null;

  const below: Seen[] = [];
  let gaps = 0;
  let gapsWithin = 0;
  for (let day = calendar.wardDay(today.from - 1); day.from >= began; day = calendar.wardDay(day.from - 1)) {
    const best = days.best(day);
    if (best?.reached) break;
    if (best) {
      below.push(best);
      gapsWithin = gaps;
    } else gaps += 1;
  }
  if (below.length < needed) return null;
  const most = below.reduce((a, b) => (showsAsMuch(b.activity, a.activity) ? b : a));
  const notSeen =
    gapsWithin === 0 ? '' : ` (${gapsWithin} ${gapsWithin === 1 ? 'day' : 'days'} not recorded, not counted)`;
  return {
    kind: 'below-baseline',
    words:
      `Below the usual way of moving (${usualWords(usualWay)}) on ${below.length} ward days in a row${notSeen}; ` +
      `most seen: ${most.activity.replaceAll('-', ' ')}`,
    because: [
      {
        rule: 'signs/below-baseline',
        facts: [usualWayFact.id, ...below.toReversed().map((b) => b.fact)],
        words: 'The most that was seen or done on each of those days, against the usual way of moving',
      },
    ],
  };
}

/** Looks back through sessions and checks once, day by day; what lies before the last day asked is never worked out. */
class Days {
  private readonly looks: readonly { readonly at: EpochMs; readonly seen: () => Seen | null }[];
  private next: number;

  constructor({ facts, sessions, protocols }: SignsInput, baseline: Activity) {
    const done = sessions.map(({ session, from, fact }) => ({
      at: from,
      seen: () => {
        const activity = showsMost(session);
        return activity && { activity, fact: fact.id, reached: reaches(session, baseline) };
      },
    }));
    const checked = facts.filter(isCheck).map((fact) => ({
      at: fact.occurred,
      seen: () => {
        const met = meaningsMet(fact.data, protocols);
        const activity = SHOWN_BY.find(([stage]) => met.has(stage))?.[1] ?? 'bed-exercise';
        return { activity, fact: fact.id, reached: showsAsMuch(activity, baseline) };
      },
    }));
    this.looks = [...done, ...checked].toSorted((a, b) => a.at - b.at);
    this.next = this.looks.length - 1;
  }

  /** Asked from the latest day back. */
  best({ from }: Period): Seen | null {
    let best: Seen | null = null;
    for (; this.next >= 0 && this.looks[this.next]!.at >= from; this.next--) {
      const one = this.looks[this.next]!.seen();
      if (one && (!best || !showsAsMuch(best.activity, one.activity))) best = one;
    }
    return best;
  }
}

const SHOWN_BY: readonly (readonly [StageMeaning, Activity])[] = [
  ['walk', 'walk'],
  ['turn', 'chair'],
  ['stand', 'stand'],
  ['edge', 'edge-sit'],
  ['upright', 'back-raised'],
];

const usualWords = ({ moves, transfers }: UsualWay): string =>
  `${{ walks: 'walks', frame: 'walks with a frame', wheelchair: 'wheelchair', bed: 'bed' }[moves]}, transfers ${transfers}`;
