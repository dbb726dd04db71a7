/** What one bed's tile says, worked out from its row: words only, no shapes. Tested as the tile's specification. */
import type { BedView, StayView, TaskPlan } from '@footboard/shared/capabilities/board/view';
import { ago, wardDayTime } from './clock.ts';
import {
  AWAY_REASON,
  HOLD_SCOPE,
  PEOPLE,
  aidList,
  dueWords,
  leadingPlan,
  planWords,
  todayWords,
  widestHold,
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
  /** First rank, two or three lines: what to know before anybody moves. */
  readonly first: readonly string[];
  /** Beside or below the first rank, smaller: what applies if it cannot wait, or what is on hold beside the plan. */
  readonly beside: string;
  readonly trust: Trust | null;
  /** Second rank. */
  readonly lastUp: string;
  readonly today: string;
  readonly due: { readonly words: string; readonly needs: boolean };
  /** One more thing that needs somebody: entries that disagree, first time up. */
  readonly also: string;
}

const QUIET = { trust: null, lastUp: '', today: '', due: { words: '', needs: false }, also: '' } as const;

export function tileSays(bed: BedView, context: TileContext): TileSays {
  const { stay } = bed;
  if (bed.state === 'empty' || !stay) return { ...QUIET, kind: 'empty', first: ['Empty'], beside: '' };
  const moment = (at: number) => wardDayTime(at, context.zone, context.now);
  const common = {
    trust: stay.scope.kind === 'comfort' ? null : stay.trust.state,
    lastUp: lastUpWords(stay, context, moment),
    today: stay.scope.kind === 'comfort' ? '' : todayWords(stay.today),
    due: { words: dueWords(stay.due, moment), needs: stay.due.state === 'overdue' },
    also: alsoWords(stay),
  };
  if (bed.state === 'away' && stay.away) {
    const back = stay.away.dueBack === null ? 'no time back given' : `back ${moment(stay.away.dueBack)}`;
    const where = AWAY_REASON[stay.away.reason] ?? 'off the ward';
    return { ...common, kind: 'away', first: ['Away', where], beside: back };
  }
  const rank = firstRank(stay, context.night);
  // Under a stop the next check is no news unless it is late: the line is left to what stops.
  const due = rank.kind === 'stop' && !common.due.needs ? QUIET.due : common.due;
  return { ...common, ...rank, due };
}

function firstRank(stay: StayView, night: boolean): Pick<TileSays, 'kind' | 'first' | 'beside'> {
  const hold = widestHold(stay);
  const holdWord = stay.holds.some((one) => one.reviewDue) ? 'HOLD REVIEW DUE' : 'HOLD';
  const holdLine = hold ? `${holdWord}: ${HOLD_SCOPE[hold.scope]}` : '';
  if (stay.scope.kind === 'clinicians-plan')
    return {
      kind: 'other-plan',
      first: ["Clinician's", 'plan only'],
      beside: holdLine || 'read it at the bedside',
    };
  if (stay.scope.kind === 'comfort')
    return { kind: 'other-plan', first: ['Comfort', 'plan'], beside: holdLine || 'as comfort asks' };
  const plan = leadingPlan(stay, night);
  const wait = plan ? `if it cannot wait: ${planWords(plan, stay.walkingSupport)}` : '';
  if (plan?.hold)
    return {
      kind: 'stop',
      first: [holdWord, hold ? HOLD_SCOPE[hold.scope] : 'do not move, ask'],
      beside: wait,
    };
  if (stay.checkBeforeMoving || !plan)
    return {
      kind: 'stop',
      first: ['CHECK BEFORE', 'MOVING'],
      beside: [holdLine, wait].filter(Boolean).join('; '),
    };
  return { kind: 'plan', first: [PEOPLE[plan.people], ...aidLines(plan, stay)], beside: holdLine };
}

/** The main aid on a line of its own, everything beside it on the next. */
function aidLines(plan: TaskPlan, stay: StayView): string[] {
  const [main = '', ...beside] = aidList(plan, stay.walkingSupport);
  return beside.length === 0 ? [main] : [main, `+ ${beside.join(' + ')}`];
}

function lastUpWords(stay: StayView, context: TileContext, moment: (at: number) => string): string {
  if (stay.scope.kind === 'comfort') return '';
  if (!stay.lastUp) return 'not up yet';
  return context.old ? `up ${moment(stay.lastUp.at)}` : `up ${ago(stay.lastUp.at, context.now)}`;
}

function alsoWords(stay: StayView): string {
  if (stay.trust.conflicts.length > 0) return 'entries disagree';
  if (stay.firstTimeUpPending) return 'first time up';
  return '';
}
