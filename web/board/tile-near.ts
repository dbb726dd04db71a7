/**
 * What stands where on a tile of the wall: short words, each in a place used for nothing else, worked
 * out from the row. The whole words are in tile.ts; a reader hears those. Pure but for the language.
 */
import type { PlannedView } from '@footboard/shared/capabilities/board/activity-view';
import type { HoldView, TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import { wardDayTime, wardTime } from './clock.ts';
import { hasMore, sayAid, sayFar, sayScope, shortAid, type FarWord } from './short.ts';
import { sayTile } from './tile-say.ts';
import type { TileContext, TileSays } from './tile.ts';
import { AWAY_REASON, leadingPlan, tierWord, todayWords, widestHold, type Trust } from './words.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** An end so near is meant when only a time is written; later ones have their day. */
const SAME_TIME_WITHIN = 18 * HOUR;

export interface NearSays {
  /** Read from farthest. Either people and aid, or one word across both places. */
  readonly people: TaskPlan['people'] | null;
  readonly aid: string;
  readonly across: { readonly word: FarWord; readonly words: string; readonly stops: boolean } | null;
  /** Beside the word across: what applies if it cannot wait, or what to do instead. */
  readonly wait: { readonly caption: string; readonly words: string } | null;
  readonly hold: 'none' | 'held' | 'review-due';
  readonly trust: Trust | null;
  readonly trustWord: string;
  /** Below the trust word: the hold's scope and end, what disagrees, or how old the check is. */
  readonly under: { readonly words: string; readonly needs: boolean };
  readonly tier: { readonly word: string; readonly notch: number | null } | null;
  readonly goal: string;
  /** Across the places of tier and goal where there is neither. */
  readonly third: string;
  readonly lastUp: string;
  readonly next: string;
  readonly fourth: string;
  readonly firstUp: boolean;
  readonly isolation: boolean;
  /** Older than its validity: drawn lighter. */
  readonly faded: boolean;
  /** Whole words, the most needed first; as many are drawn as there is room. */
  readonly lines: readonly string[];
}

const NOTHING: NearSays = {
  people: null,
  aid: '',
  across: null,
  wait: null,
  hold: 'none',
  trust: null,
  trustWord: '',
  under: { words: '', needs: false },
  tier: null,
  goal: '',
  third: '',
  lastUp: '',
  next: '',
  fourth: '',
  firstUp: false,
  isolation: false,
  faded: false,
  lines: [],
};

const across = (word: FarWord, stops = false) => ({ word, words: sayFar(word), stops });

export function nearSays(bed: BedView, says: TileSays, context: TileContext): NearSays {
  const { stay } = bed;
  if (says.kind === 'empty' || !stay) return { ...NOTHING, across: across('empty') };
  if (stay.shown === 'ask-at-the-bedside') {
    return {
      ...NOTHING,
      trustWord: context.old ? sayTile('last-known') : '',
      across: across('ASK', true),
      third: sayTile('at-bedside'),
    };
  }
  const plan = leadingPlan(stay, context.night);
  const own = {
    ...NOTHING,
    ...known(stay, context),
    hold: holdShape(stay, plan),
    lines: linesOf(says, stay),
  };
  switch (says.kind) {
    case 'away':
      return {
        ...own,
        across: across('away'),
        wait: says.held.length > 0 ? { caption: sayTile('when-back'), words: says.held[0]! } : null,
        tier: null,
        goal: '',
        third: AWAY_REASON[stay.away?.reason ?? 'other'] ?? AWAY_REASON['other']!,
        lastUp: '',
        next: '',
        fourth: says.beside,
        lines: says.held,
      };
    case 'other-plan':
      return {
        ...own,
        across: across(stay.scope.kind === 'comfort' ? 'comfort' : 'bedside'),
        tier: null,
        goal: '',
        third: says.first[0]!,
        lastUp: '',
        next: '',
        fourth: says.beside,
        lines: says.held,
      };
    case 'stop':
      return {
        ...own,
        across: across(plan?.hold ? 'HOLD' : 'CHECK', true),
        wait: plan ? { caption: sayTile('cannot-wait'), words: shortPlan(plan, stay) } : null,
      };
    default:
      return { ...own, people: plan!.people, aid: aidWord(plan!, stay) };
  }
}

function aidWord(plan: TaskPlan, stay: StayView): string {
  const word = sayAid(shortAid(plan, stay.walkingSupport));
  return hasMore(plan, stay.walkingSupport) ? `${word}+` : word;
}
const shortPlan = (plan: TaskPlan, stay: StayView): string =>
  `${sayTile(`people-${plan.people}`)} ${aidWord(plan, stay)}`;

function holdShape(stay: StayView, plan: TaskPlan | null): NearSays['hold'] {
  if (stay.holds.some((hold) => hold.reviewDue)) return 'review-due';
  return stay.holds.length > 0 || plan?.hold ? 'held' : 'none';
}

/** What needs no plan: trust, tier, ages, the day. Where visitors pass there is none of it. */
function known(stay: StayView, context: TileContext): Partial<NearSays> {
  const scope = widestHold(stay);
  const hold = scope && holdWords(scope, context);
  // Old is said of everybody, also of whom no trust is shown.
  const always = {
    ...(context.old ? { trustWord: sayTile('last-known') } : {}),
    ...(hold ? { under: { words: hold, needs: true } } : {}),
  };
  if (stay.shown === 'visitors') return always;
  if (stay.scope.kind === 'comfort') return { ...always, isolation: stay.isolation };
  return {
    trust: stay.trust.state,
    trustWord: context.old ? sayTile('last-known') : sayTile(`trust-${stay.trust.state}`),
    under: hold ? { words: hold, needs: true } : checkWords(stay, context),
    tier: stay.tier.word === null ? null : { word: shortTier(stay.tier.word), notch: stay.tier.notch },
    goal: todayWords(stay.today),
    lastUp: lastUpWords(stay, context),
    next: nextWords(stay, context),
    firstUp: stay.firstTimeUpPending,
    isolation: stay.isolation,
    faded: stay.due.state === 'overdue',
  };
}

/** Not known has a shorter word where the place is short; it is the same as of trust. */
const shortTier = (word: string): string =>
  word === 'Not known' ? sayTile('tier-not-known') : tierWord(word);

function holdWords(hold: HoldView, { zone, now }: TileContext): string {
  const scope = sayScope(hold.scope);
  // An end that has passed frees nobody, and beside what is stopped it would read as if it had: the
  // shape says that the review is due. Where a wall may not say the end there is none in its rows.
  if (hold.reviewDue || hold.reviewAt === 0) return scope;
  const end =
    hold.reviewAt - now < SAME_TIME_WITHIN
      ? wardTime(hold.reviewAt, zone)
      : wardDayTime(hold.reviewAt, zone, now).split(' ')[0]!;
  return `${scope} ${end}`;
}

function checkWords(stay: StayView, context: TileContext): NearSays['under'] {
  if (stay.trust.conflicts.length > 0) return { words: sayTile('disagree'), needs: true };
  const { at } = stay.tier;
  if (at === null) return { words: sayTile('not-checked'), needs: false };
  return { words: sayTile('checked', { age: age(at, context) }), needs: stay.due.state === 'overdue' };
}

function lastUpWords(stay: StayView, context: TileContext): string {
  if (!stay.lastUp) return sayTile('not-up');
  return sayTile('up', { age: age(stay.lastUp.at, context) });
}

/** A booking, or the next visit of the accepted plan where nothing nearer is booked; held, it is no next one. */
function nextWords(stay: StayView, context: TileContext): string {
  const { visit } = stay;
  const planned = nextPlanned(stay, context.now);
  if (!planned) return visit ? visitWords(visit, context) : '';
  return sayTile(planned.stopped ? 'held' : 'next', { time: wardTime(planned.from, context.zone) });
}
/** Null where a booking is nearer, or somebody is there. */
export function nextPlanned({ visit, planned }: StayView, now: number): PlannedView | null {
  const [next = null] = planned ?? [];
  return visit && next && visit.from <= Math.max(next.from, now) ? null : next;
}

/** A visit that has begun is no next one: somebody is there. Under LAST KNOWN nobody knows whether it has. */
function visitWords({ from }: NonNullable<StayView['visit']>, { zone, now, old }: TileContext): string {
  return sayTile(from <= now && !old ? 'since' : 'next', { time: wardTime(from, zone) });
}

/** Under LAST KNOWN the instant, because no age is known. */
function age(at: number, { old, zone, now }: TileContext): string {
  if (old) return wardDayTime(at, zone, now);
  const minutes = Math.max(0, Math.floor((now - at) / MINUTE));
  if (minutes < 60) return sayTile('ago-minutes', { n: minutes });
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? sayTile('ago-hours', { n: hours }) : sayTile('ago-days', { n: Math.floor(hours / 24) });
}

function linesOf({ kind, first, held, wait, due, also, sign }: TileSays, stay: StayView): readonly string[] {
  // Under a stop the plan's own words come first: what stops stands large already.
  const stop = kind === 'stop' ? [wait && sayTile('wait-line', { plan: wait }), first.join(': ')] : [];
  const plan = kind === 'plan' ? [first.join(', ')] : [];
  // That it is the first time has a place of its own.
  const disagree = stay.trust.conflicts.length > 0 ? also : '';
  return [...stop, ...plan, ...held, disagree, due.words, sign].filter((words) => words !== '');
}
