/** The parts of the huddle that need the last one: what changed since, and what was agreed. Pure. */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { HuddlePage } from '../../../wire/http.ts';
import type { BoardView } from '../../board/view.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import { changesBetween, type Happened } from './changes.ts';
import type { HuddleState, OpenAction } from './huddle-state.ts';

/** How far back a ward looks that has held no huddle yet. */
const WITHOUT_A_HUDDLE = 24 * HOUR;

/** The instant that changes are counted from, and the log's position known then; null: to be looked up by the instant. */
export function sinceWhen(
  { last }: HuddleState,
  t: EpochMs,
): { readonly at: EpochMs; readonly position: number | null } {
  // By whole hours, so that the same board is asked for all through one.
  return last
    ? { at: last.at, position: last.position }
    : { at: Math.floor((t - WITHOUT_A_HUDDLE) / HOUR) * HOUR, position: null };
}

export interface ReviewInput {
  readonly state: HuddleState;
  /** The board as it was known at the last huddle. */
  readonly before: BoardView;
  readonly now: BoardView;
  readonly happened: readonly Happened[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  /** Notes of actions, by reference; null where the text was removed. */
  readonly texts: ReadonlyMap<string, string | null>;
}

export function reviewOf({
  state,
  before,
  now,
  happened,
  t,
  calendar,
  texts,
}: ReviewInput): Pick<HuddlePage, 'since' | 'changes' | 'actions'> {
  const nurses = new Map(now.beds.map(({ bed, carers }) => [bed as string, carers?.nurse ?? null]));
  const say = (at: EpochMs): string => sayDayTime(calendar.zone, at);
  return {
    since: { at: sinceWhen(state, t).at, held: state.last !== null, by: state.last?.by ?? null },
    changes: changesBetween(before, now, happened, say).map((change) => ({
      ...change,
      owner: change.kind === 'left' ? null : (nurses.get(change.bed) ?? null),
    })),
    actions: inOrder([...state.actions.values()], state).map((action) => {
      const row = now.beds.find((bed) => bed.stay !== null && bed.stay.stay === action.stay);
      return {
        action: action.action,
        kind: action.kind,
        owner: action.owner,
        by: action.by,
        agreedAt: action.agreedAt,
        earlier: isEarlier(action, state),
        overdue: action.by <= t,
        stay: action.stay,
        bed: row ? { bed: row.bed, label: row.label } : null,
        note: action.note ? (texts.get(action.note.ref) ?? '(text removed)') : null,
      };
    }),
  };
}

const isEarlier = ({ position }: OpenAction, { last }: HuddleState): boolean =>
  last !== null && position < last.position;

/** Those of earlier huddles first, then by the time they are to be done by. */
const inOrder = (actions: readonly OpenAction[], state: HuddleState): OpenAction[] =>
  actions.toSorted((a, b) => Number(isEarlier(b, state)) - Number(isEarlier(a, state)) || a.by - b.by);
