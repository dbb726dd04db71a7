/**
 * What the ward's own stream says of its huddles: when the last one was held, what was agreed and is
 * not closed, and who is expected. Pure; positions and instants come from the events.
 */
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import type { BedId, StaffId, StayId, TextRef, WardId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { UsualWay } from '../../stays/values.ts';
import type { actionAgreed, actionClosed, arrivalExpected, expectedArrivalClosed } from '../events.ts';
import type { ActionKind } from '../values.ts';

export interface OpenAction {
  readonly action: string;
  readonly kind: ActionKind;
  readonly owner: StaffId;
  readonly by: EpochMs;
  /** When it was first agreed; a new owner or time does not make it younger. */
  readonly agreedAt: EpochMs;
  readonly position: number;
  readonly stay: StayId | null;
  readonly note: TextRef | null;
}

export interface ExpectedArrival {
  readonly expected: string;
  readonly at: EpochMs;
  readonly from: PayloadOf<typeof arrivalExpected>['from'];
  readonly bed: BedId | null;
  readonly usual: UsualWay | null;
  readonly previous: { readonly ward: WardId; readonly stay: StayId } | null;
  readonly bariatric: boolean;
}

export interface HuddleState {
  readonly last: { readonly position: number; readonly at: EpochMs; readonly by: StaffId } | null;
  /** Agreed and not closed, in the order they were first agreed. */
  readonly actions: ReadonlyMap<string, OpenAction>;
  readonly closed: ReadonlySet<string>;
  /** Open ones, in the order they were entered. */
  readonly expected: ReadonlyMap<string, ExpectedArrival>;
  /** Every id of an expected arrival ever used. */
  readonly expectedIds: ReadonlySet<string>;
}

export const NO_HUDDLE: HuddleState = {
  last: null,
  actions: new Map(),
  closed: new Set(),
  expected: new Map(),
  expectedIds: new Set(),
};

/** The same object comes back when no event concerned a huddle. */
export const foldHuddle = (events: readonly LoggedEvent[], from: HuddleState = NO_HUDDLE): HuddleState =>
  events.reduce((state, event) => (event.stream.startsWith('ward/') ? foldOne(state, event) : state), from);

function foldOne(state: HuddleState, event: LoggedEvent): HuddleState {
  switch (event.type) {
    case 'huddle-held':
      return {
        ...state,
        last: { position: event.position, at: event.occurred, by: event.author.staff },
      };
    case 'action-agreed': {
      const p = event.payload as PayloadOf<typeof actionAgreed>;
      if (state.closed.has(p.action)) return state;
      return { ...state, actions: new Map(state.actions).set(p.action, agreed(state, event, p)) };
    }
    case 'action-closed': {
      const { action } = event.payload as PayloadOf<typeof actionClosed>;
      return {
        ...state,
        actions: without(state.actions, action),
        closed: new Set(state.closed).add(action),
      };
    }
    case 'arrival-expected': {
      const p = event.payload as PayloadOf<typeof arrivalExpected>;
      const one: ExpectedArrival = {
        expected: p.expected,
        at: toEpoch(p.at),
        from: p.from,
        bed: p.bed ?? null,
        usual: p.usual ?? null,
        previous: p.previous ?? null,
        bariatric: p.bariatric,
      };
      return {
        ...state,
        expected: new Map(state.expected).set(p.expected, one),
        expectedIds: new Set(state.expectedIds).add(p.expected),
      };
    }
    case 'expected-arrival-closed': {
      const { expected } = event.payload as PayloadOf<typeof expectedArrivalClosed>;
      return { ...state, expected: without(state.expected, expected) };
    }
    default:
      return state;
  }
}

/** Agreed anew, it keeps whom it is about and what was noted, unless something else is said. */
function agreed({ actions }: HuddleState, event: LoggedEvent, p: PayloadOf<typeof actionAgreed>): OpenAction {
  const before = actions.get(p.action);
  return {
    action: p.action,
    kind: p.kind,
    owner: p.owner,
    by: toEpoch(p.by),
    agreedAt: before?.agreedAt ?? event.occurred,
    position: before?.position ?? event.position,
    stay: p.stay ?? before?.stay ?? null,
    note: p.note ?? before?.note ?? null,
  };
}

function without<V>(from: ReadonlyMap<string, V>, key: string): ReadonlyMap<string, V> {
  const left = new Map(from);
  left.delete(key);
  return left;
}
