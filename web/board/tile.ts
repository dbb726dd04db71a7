/** What one bed's tile says, worked out from its row: words only, no shapes. Tested as the tile's specification. */
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import { ago, wardDayTime } from './clock.ts';
import { sayTile } from './tile-say.ts';
import {
  AWAY_REASON,
  PEOPLE,
  aidWords,
  dueWords,
  holdScopeWords,
  leadingPlan,
  planWords,
  todayWords,
  type Trust,
} from './words.ts';

export interface TileContext {
  readonly zone: string;
  readonly night: boolean;
  /** The server's clock. */
  readonly now: number;
  /** True under LAST KNOWN: instants instead of ages, and no trust. */
  readonly old: boolean;
}

export interface TileSays {
  /** `stop`: hold or check before moving, drawn on the accent. */
  readonly kind: 'empty' | 'away' | 'plan' | 'stop' | 'other-plan';
  /** First rank, one to three blocks of words: what to know before anybody moves. */
  readonly first: readonly string[];
  /** What is stopped beside the first rank, read from as far: "HOLD: no walking". */
  readonly held: readonly string[];
  /** Under a stop: the plan that applies if it cannot wait, read from as far. */
  readonly wait: string;
  /** Smaller: where else to look, or when someone is back. */
  readonly beside: string;
  readonly trust: Trust | null;
  /** Second rank. */
  readonly lastUp: string;
  readonly today: string;
  readonly due: { readonly words: string; readonly needs: boolean };
  /** One more thing that needs somebody: entries that disagree, first time up. */
  readonly also: string;
  /** Where the stay is going, in a few quiet words; drawn only where there is room. */
  readonly sign: string;
}

const NO_DUE = { words: '', needs: false } as const;
const QUIET = {
  held: [],
  wait: '',
  trust: null,
  lastUp: '',
  today: '',
  due: NO_DUE,
  also: '',
  sign: '',
} as const;

export function tileSays(bed: BedView, context: TileContext): TileSays {
  const { stay } = bed;
  if (bed.state === 'empty' || !stay)
    return { ...QUIET, kind: 'empty', first: [sayTile('empty')], beside: '' };
  if (stay.shown === 'ask-at-the-bedside')
    return { ...QUIET, kind: 'stop', first: [sayTile('ask')], beside: '' };
  const moment = (at: number) => wardDayTime(at, context.zone, context.now);
  const rank =
    bed.state === 'away' && stay.away
      ? awayRank(stay, stay.away, context.night, moment)
      : firstRank(stay, context.night);
  // Where visitors pass, what is left out is not said to be missing.
  if (stay.shown === 'visitors') return { ...QUIET, ...rank, beside: '' };
  const late = stay.due.state === 'overdue';
  // Where something stops, the next check is no news unless it is late: the line is left to what stops.
  const crowded = rank.kind === 'stop' && rank.held.length > 0;
  const dueIsNews = late || (rank.kind !== 'stop' && rank.held.length === 0);
  return {
    ...rank,
    trust: stay.scope.kind === 'comfort' ? null : stay.trust.state,
    lastUp: crowded ? '' : lastUpWords(stay, context, moment),
    today: crowded || stay.scope.kind === 'comfort' ? '' : todayWords(stay.today),
    due: dueIsNews ? { words: dueWords(stay.due, moment), needs: late } : NO_DUE,
    also: alsoWords(stay),
    sign: rank.kind === 'plan' && rank.held.length === 0 ? signWords(stay) : '',
  };
}

/**
 * Short enough for the last line of a tile; the whole sentence is on the stay page. That somebody said
 * no is between them and who asks: it never stands on a wall.
 */
const SIGN = {
  'stages-lost': 'losing-ground',
  refusals: null,
  'below-baseline': 'below-usual',
  ready: 'ready-for-more',
} as const satisfies Record<StayView['signs'][number]['kind'], string | null>;
function signWords(stay: StayView): string {
  const key = stay.signs.map((sign) => SIGN[sign.kind]).find((one) => one !== null);
  return key ? sayTile(key) : '';
}

type Rank = Pick<TileSays, 'kind' | 'first' | 'held' | 'wait' | 'beside'>;

const holdWord = (stay: StayView) =>
  sayTile(stay.holds.some((one) => one.reviewDue) ? 'hold-review-due' : 'hold');
const heldLines = (stay: StayView): string[] =>
  stay.holds.length > 0 ? [sayTile('hold-of', { hold: holdWord(stay), scope: holdScopeWords(stay) })] : [];
const unchecked = (stay: StayView, plan: TaskPlan | null) =>
  stay.scope.kind === 'staged' && (stay.checkBeforeMoving || !plan);

/** What stops somebody who is away stops them when they come back: it is said already now. */
function awayRank(
  stay: StayView,
  away: NonNullable<StayView['away']>,
  night: boolean,
  moment: (at: number) => string,
): Rank {
  const plan = leadingPlan(stay, night);
  const stops = [...heldLines(stay), ...(unchecked(stay, plan) ? [sayTile('check')] : [])];
  // A plan on hold with no hold placed: an order or two facts that cannot be joined.
  if (stops.length === 0 && plan?.hold)
    stops.push(sayTile('hold-of', { hold: sayTile('hold'), scope: sayTile('do-not-move') }));
  return {
    kind: 'away',
    first: [sayTile('away', { reason: AWAY_REASON[away.reason] ?? AWAY_REASON['other']! })],
    held: stops,
    wait: '',
    beside: away.dueBack === null ? sayTile('no-time-back') : sayTile('back', { time: moment(away.dueBack) }),
  };
}

function firstRank(stay: StayView, night: boolean): Rank {
  const held = heldLines(stay);
  if (stay.scope.kind === 'clinicians-plan')
    return {
      kind: 'other-plan',
      first: [sayTile('clinicians-plan')],
      held,
      wait: '',
      beside: sayTile('read-at-bedside'),
    };
  if (stay.scope.kind === 'comfort')
    return {
      kind: 'other-plan',
      first: [sayTile('comfort')],
      held,
      wait: '',
      beside: sayTile('as-comfort-asks'),
    };
  const plan = leadingPlan(stay, night);
  const wait = plan ? planWords(plan, stay.walkingSupport) : '';
  if (plan?.hold)
    return {
      kind: 'stop',
      first: [holdWord(stay), held.length > 0 ? holdScopeWords(stay) : sayTile('do-not-move')],
      held: [],
      wait,
      beside: '',
    };
  if (unchecked(stay, plan)) return { kind: 'stop', first: [sayTile('check')], held, wait, beside: '' };
  return {
    kind: 'plan',
    first: [PEOPLE[plan!.people], aidWords(plan!, stay.walkingSupport)],
    held,
    wait: '',
    beside: '',
  };
}

function lastUpWords(stay: StayView, context: TileContext, moment: (at: number) => string): string {
  if (stay.scope.kind === 'comfort') return '';
  if (!stay.lastUp) return sayTile('not-up-yet');
  return sayTile('up-at', {
    time: context.old ? moment(stay.lastUp.at) : ago(stay.lastUp.at, context.now),
  });
}

function alsoWords(stay: StayView): string {
  if (stay.trust.conflicts.length > 0) return sayTile('disagree-whole');
  if (stay.firstTimeUpPending) return sayTile('first-time-up');
  return '';
}
