import type { BedId, StaffId, StayId, WardId } from '../../../kernel/ids.ts';
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import type { Bed, NamedCarers, WardState } from '../context.ts';
import type {
  wardSetUp,
  wardChanged,
  bedAdded,
  bedChanged,
  bedClosed,
  protocolPublished,
  rulesPublished,
} from '../events.ts';
import { foldListed, LIST_EVENTS, NOTHING_LISTED } from '../../aids/rules/listed.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { carersNamed, expectedArrivalClosed } from '../../dayplan/events.ts';
import type { peopleOnSet } from '../../planning/events.ts';
import { laterPlan, planOf, type AcceptedPlan } from '../../planning/rules/accepted.ts';
import { NOBODY_NAMED, withPeopleOn } from '../../planning/rules/people-on.ts';
import type { staffMemberAdded, staffMemberChanged } from '../../people/events.ts';
import { DEFAULT_PANEL, DEFAULT_UNITS } from '../values.ts';
import { completed, DEFAULT_RULES, rulesDocument, type RulesDocument } from './rules-document.ts';

/**
 * The ward's own stream, folded in position order: the newest setting counts. Null until the ward
 * is set up. Give `from` to go on from an earlier fold; the same object comes back when no event
 * concerned the ward.
 */
export function foldWard(
  ward: WardId,
  events: readonly LoggedEvent[],
  from: WardState | null = null,
): WardState | null {
  let state = from;
  for (const event of events) {
    if (event.ward === ward && event.stream.startsWith('ward/')) state = foldOne(ward, state, event);
  }
  return state;
}

const NOTHING_YET = {
  panel: DEFAULT_PANEL,
  units: DEFAULT_UNITS,
  language: 'en',
  beds: [],
  ...NOTHING_LISTED,
  staff: new Map(),
  carers: new Map(),
  peopleOn: NOBODY_NAMED,
  dayPlan: null,
  notExpected: new Map(),
  protocols: [],
  rules: null,
} as const;

function foldOne(ward: WardId, state: WardState | null, event: LoggedEvent): WardState | null {
  if (event.type === 'ward-set-up') {
    const p = event.payload as PayloadOf<typeof wardSetUp>;
    const kept = state ?? NOTHING_YET;
    return { ...kept, ...p, ward };
  }
  if (!state) return null;
  switch (event.type) {
    case 'ward-changed':
      return { ...state, ...present(event.payload as PayloadOf<typeof wardChanged>) };
    case 'bed-added': {
      const p = event.payload as PayloadOf<typeof bedAdded>;
      return { ...state, beds: [...state.beds.filter((b) => b.bed !== p.bed), p] };
    }
    case 'bed-changed': {
      const p = event.payload as PayloadOf<typeof bedChanged>;
      return { ...state, beds: state.beds.map((b): Bed => (b.bed === p.bed ? { ...b, ...present(p) } : b)) };
    }
    case 'bed-closed': {
      const closed: BedId = (event.payload as PayloadOf<typeof bedClosed>).bed;
      return {
        ...state,
        beds: state.beds.filter((b) => b.bed !== closed),
        carers: withCarers(state, [[closed, null]]),
      };
    }
    case 'staff-member-added': {
      const p = event.payload as PayloadOf<typeof staffMemberAdded>;
      const { role, name, standing = 'own' } = p;
      return { ...state, staff: withStaff(state, p.staff, { role, name, standing, active: true }) };
    }
    case 'staff-member-changed': {
      const { staff, ...change } = event.payload as PayloadOf<typeof staffMemberChanged>;
      const known = state.staff.get(staff);
      return known ? { ...state, staff: withStaff(state, staff, { ...known, ...present(change) }) } : state;
    }
    case 'carers-named': {
      const { until, beds } = event.payload as PayloadOf<typeof carersNamed>;
      const named = beds.map(({ bed, nurse, aide }): [BedId, NamedCarers | null] => [
        bed,
        nurse || aide ? { until: toEpoch(until), who: { nurse, aide } } : null,
      ]);
      return { ...state, carers: withCarers(state, named) };
    }
    case 'people-on-set':
      return {
        ...state,
        peopleOn: withPeopleOn(state.peopleOn, event.payload as PayloadOf<typeof peopleOnSet>),
      };
    case 'day-plan-accepted':
      return withPlan(state, planOf(event));
    case 'expected-arrival-closed': {
      const { expected, stay } = event.payload as PayloadOf<typeof expectedArrivalClosed>;
      const planned = state.dayPlan?.placements.some((one) => one.stay === expected) ?? false;
      if (!planned) return state;
      return { ...state, notExpected: new Map(state.notExpected).set(expected as StayId, stay ?? null) };
    }
    case 'protocol-published': {
      const p = event.payload as PayloadOf<typeof protocolPublished>;
      return { ...state, protocols: [...state.protocols, p] };
    }
    case 'rules-published':
      return { ...state, rules: (event.payload as PayloadOf<typeof rulesPublished>).document };
    default:
      return LIST_EVENTS.has(event.type) ? foldListed(state, event) : state;
  }
}

/** Who is expected no more is kept for the plan that counts alone. */
function withPlan(state: WardState, plan: AcceptedPlan): WardState {
  const dayPlan = laterPlan(state.dayPlan, plan);
  if (dayPlan === state.dayPlan) return state;
  const named = new Set(dayPlan.placements.map(({ stay }) => stay));
  return {
    ...state,
    dayPlan,
    notExpected: new Map([...state.notExpected].filter(([expected]) => named.has(expected))),
  };
}

const withStaff = (
  state: WardState,
  staff: StaffId,
  entry: WardState['staff'] extends ReadonlyMap<StaffId, infer V> ? V : never,
): WardState['staff'] => new Map(state.staff).set(staff, entry);

/** The same map where nothing changes; null takes the names of a bed back. */
function withCarers(
  { carers }: WardState,
  named: readonly (readonly [BedId, NamedCarers | null])[],
): WardState['carers'] {
  if (named.every(([bed, who]) => who === null && !carers.has(bed))) return carers;
  const next = new Map(carers);
  for (const [bed, who] of named) {
    if (who) next.set(bed, who);
    else next.delete(bed);
  }
  return next;
}

type Present<T> = { [K in keyof T]?: Exclude<T[K], undefined> };
/** Without the keys that say nothing. */
const present = <T extends object>(given: T): Present<T> =>
  Object.fromEntries(Object.entries(given).filter(([, v]) => v !== undefined)) as Present<T>;

const checked = new WeakMap<object, RulesDocument>();

/** The ward's published rules, or the defaults when none are published (or they cannot be read). */
export function rulesOf(ward: Pick<WardState, 'rules'>): RulesDocument {
  const document = ward.rules;
  if (typeof document !== 'object' || document === null) return DEFAULT_RULES;
  let rules = checked.get(document);
  if (!rules) {
    const read = rulesDocument.safeParse(completed(document));
    rules = read.success ? read.data : DEFAULT_RULES;
    checked.set(document, rules);
  }
  return rules;
}
