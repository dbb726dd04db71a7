/**
 * What is known of a piece of equipment at an instant: where it is, who has it, whether it is clean,
 * charged and in service. Everything that was seen gets old: beyond the ward's hours it reads
 * "unknown", never "fine" (common practice, no source).
 */
import type { LoggedEvent, PayloadOf } from '../../../kernel/event-type.ts';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { HOUR, toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type {
  batteryRead,
  itemBack,
  itemBound,
  itemCleaning,
  itemOutOfService,
  itemReceived,
  itemSeen,
  itemTaken,
} from '../events.ts';
import type { Battery, Defect } from '../values.ts';

interface Since {
  readonly at: EpochMs;
  readonly by: StaffId;
}
export interface ItemState {
  readonly place: (Since & { readonly words: string }) | null;
  /** Looked for and not found, with nobody having seen it since. */
  readonly missing: Since | null;
  readonly inUse: (Since & { readonly usedBy: StayId | null; readonly isolation: boolean }) | null;
  readonly clean: (Since & { readonly is: boolean }) | null;
  readonly battery: (Since & { readonly band: Battery }) | null;
  readonly outOfService: (Since & { readonly defect: Defect }) | null;
  /** The latest that was found broken, whatever it was returned to service after. */
  readonly lastFault: (Since & { readonly defect: Defect }) | null;
  readonly keptFor: StayId | null;
  /** When it was last taken or brought back, returned to service, and kept for somebody. */
  readonly moved: Since | null;
  readonly backInService: Since | null;
  readonly bound: Since | null;
}

export const NOTHING_SEEN: ItemState = {
  place: null,
  missing: null,
  inUse: null,
  clean: null,
  battery: null,
  outOfService: null,
  lastFault: null,
  keptFor: null,
  moved: null,
  backInService: null,
  bound: null,
};

const later = (at: EpochMs, than: Since | null): boolean => than === null || at >= than.at;

/**
 * One event more. Each question (who has it, where, clean, battery, service) is answered by what
 * occurred last, so an entry that comes late never covers a newer one.
 */
export function foldItem(state: ItemState, event: LoggedEvent): ItemState {
  const since: Since = { at: event.occurred, by: event.author.staff };
  const { at } = since;
  switch (event.type) {
    case 'item-taken': {
      const { usedBy, isolation } = event.payload as PayloadOf<typeof itemTaken>;
      if (!later(at, state.moved)) return isolation ? neededCleaning(state, since) : state;
      return {
        ...state,
        moved: since,
        missing: later(at, state.missing) ? null : state.missing,
        inUse: { ...since, usedBy: usedBy ?? null, isolation: isolation || stillToClean(state) },
      };
    }
    case 'item-back': {
      const { place } = event.payload as PayloadOf<typeof itemBack>;
      if (!later(at, state.moved)) return state;
      const clean = cleanWhenBack(state, since);
      const seenSince = !later(at, state.place) || !later(at, state.missing);
      const put =
        place === undefined ? state.place && { ...state.place, ...since } : { ...since, words: place };
      return {
        ...state,
        moved: since,
        missing: later(at, state.missing) ? null : state.missing,
        inUse: null,
        clean: later(at, state.clean) ? clean : state.clean,
        place: seenSince ? state.place : put,
      };
    }
    case 'item-seen': {
      const { place } = event.payload as PayloadOf<typeof itemSeen>;
      if (!later(at, state.place) || !later(at, state.missing)) return state;
      return { ...state, missing: null, place: { ...since, words: place } };
    }
    case 'item-not-there':
      if (!later(at, state.place) || !later(at, state.moved) || !later(at, state.missing)) return state;
      return { ...state, missing: since, place: null };
    case 'item-cleaning': {
      const { clean: is } = event.payload as PayloadOf<typeof itemCleaning>;
      return later(at, state.clean) ? { ...state, clean: { ...since, is } } : state;
    }
    case 'battery-read': {
      const { band } = event.payload as PayloadOf<typeof batteryRead>;
      return later(at, state.battery) ? { ...state, battery: { ...since, band } } : state;
    }
    case 'item-out-of-service': {
      const { defect } = event.payload as PayloadOf<typeof itemOutOfService>;
      if (state.backInService && at < state.backInService.at) return state;
      const fault = { ...since, defect };
      return {
        ...state,
        outOfService: state.outOfService ?? fault,
        lastFault: later(at, state.lastFault) ? fault : state.lastFault,
      };
    }
    case 'item-in-service': {
      const { outOfService, lastFault } = state;
      if (!later(at, state.backInService)) return state;
      // What was found broken after the coordinator looked still stands, the first of it if that was after it too.
      const stands = [outOfService, lastFault].find((fault) => fault !== null && fault.at > at) ?? null;
      return { ...state, outOfService: stands, backInService: since };
    }
    case 'item-bound': {
      const { keptFor } = event.payload as PayloadOf<typeof itemBound>;
      return later(at, state.bound) ? { ...state, bound: since, keptFor } : state;
    }
    case 'item-received': {
      const { clean, battery, outOfService } = event.payload as PayloadOf<typeof itemReceived>;
      const { by } = since;
      return {
        ...NOTHING_SEEN,
        moved: since,
        clean: clean && { at: toEpoch(clean.at), by, is: clean.is },
        battery: battery && { at: toEpoch(battery.at), by, band: battery.band },
        ...brokenSince(outOfService && { at: toEpoch(outOfService.at), by, defect: outOfService.defect }),
      };
    }
    default:
      return state;
  }
}

const brokenSince = (fault: ItemState['outOfService']) => ({ outOfService: fault, lastFault: fault });

/** From a room with infection steps to the next person, and nobody has cleaned it between. */
const stillToClean = ({ inUse, clean }: ItemState): boolean =>
  inUse?.isolation === true && !(clean?.is === true && clean.at > inUse.at);

/**
 * Said late: it was in a room with infection steps before it was last taken or brought back. Only who has cleaned it
 * since then has cleaned it; whoever brought it back did not know.
 */
function neededCleaning(state: ItemState, since: Since): ItemState {
  const { clean, moved } = state;
  if (clean?.is === true && clean.at > moved!.at) return state;
  return { ...state, clean: { ...since, at: Math.max(since.at, clean?.at ?? since.at), is: false } };
}

/**
 * Whoever brings it back has wiped it; from a room with infection steps, or known to be dirty, that is
 * not enough. For whom it was taken must have been said: else nobody knows in which room it was.
 */
function cleanWhenBack({ inUse, clean }: ItemState, since: Since): ItemState['clean'] {
  if (clean?.is === false || !inUse) return clean;
  if (inUse.isolation) return { ...since, is: false };
  return inUse.usedBy === null ? null : { ...since, is: true };
}

/** The same with everything that is older than the ward's hours taken away. `note` is told when the next thing gets old. */
export function itemAt(
  state: ItemState,
  t: EpochMs,
  rules: RulesDocument['aids'],
  note: (at: EpochMs) => void,
): ItemState {
  const fresh = <S extends Since>(one: S | null, hours: number): S | null => {
    if (!one || one.at > t) return null;
    const until = one.at + hours * HOUR;
    if (t >= until) return null;
    note(until);
    return one;
  };
  return {
    ...state,
    place: fresh(state.place, rules.placeHours.value),
    inUse: fresh(state.inUse, rules.inUseHours.value),
    // Dirty stays dirty until somebody has cleaned it.
    clean: state.clean?.is === false ? state.clean : fresh(state.clean, rules.cleanHours.value),
    battery: state.battery?.band === 'flat' ? state.battery : fresh(state.battery, rules.batteryHours.value),
  };
}
