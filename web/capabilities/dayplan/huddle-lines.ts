/**
 * Lines of the huddle that stand on the board's rows alone: signs, waking time since last up, steps of
 * a goal that wait for a qualified person. Pure; bed by bed in the ward's order unless said otherwise.
 */
import type { SignView } from '@footboard/shared/capabilities/board/activity-view';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import type { HuddlePage } from '@footboard/shared/wire/http';
import { told } from '../../i18n/told.ts';
import { awakeMs, debtWords } from '../../board/debt.ts';
import { goalWords } from '../sessions/goal-words.ts';
import { inside, sentence } from '../words.ts';
import { say } from './words.ts';

export type HuddleLine = HuddlePage['overdue'][number];
type Said = Pick<HuddleLine, 'words' | 'because'>;

const lines = (beds: readonly BedView[], of: (stay: StayView) => readonly Said[]): HuddleLine[] =>
  beds.flatMap(({ bed, label, carers, stay }) =>
    stay
      ? of(stay).map((said) => ({ bed, label, stay: stay.stay, owner: carers?.nurse ?? null, ...said }))
      : [],
  );

/** What is lost needs somebody sooner than what may be gained. */
const SIGNS: readonly SignView['kind'][] = ['stages-lost', 'refusals', 'below-baseline', 'ready'];
/** Where a stay is going, kind by kind. */
export const signLines = (
  beds: readonly BedView[],
  kinds: readonly SignView['kind'][] = SIGNS,
): readonly HuddleLine[] =>
  kinds.flatMap((kind) =>
    lines(beds, ({ signs }) =>
      signs
        .filter((sign) => sign.kind === kind)
        .map(({ words, because }) => ({ words: sentence(told(words)), because })),
    ),
  );

/** Who has been awake longest since last up, from the ward's limit on. Nobody away: they cannot be got up here. */
export const debtLines = (beds: readonly BedView[], now: number): readonly HuddleLine[] =>
  lines(
    beds
      .filter(({ stay }) => stay?.debt?.owed && !stay.away)
      .toSorted((a, b) => awakeMs(b.stay!.debt!, now) - awakeMs(a.stay!.debt!, now)),
    ({ debt, lastUp }) => [
      {
        words: `${sentence(debtWords(debt!, lastUp, now))}; ${inside(told(debt!.clears))}`,
        because: debt!.because,
      },
    ],
  );

/** Steps of a goal that wait for a nurse or therapist; nothing of it is in force. */
export const proposalLines = (beds: readonly BedView[]): readonly HuddleLine[] =>
  lines(beds, ({ proposal }) =>
    proposal
      ? [
          {
            words: say(proposal.step === 'up' ? 'step-up' : 'step-back', { goal: goalWords(proposal.goal) }),
            because: proposal.because,
          },
        ]
      : [],
  );
