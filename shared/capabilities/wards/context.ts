import type { BedId, StaffId, StayId, WardId } from '../../kernel/ids.ts';
import type { Role, Standing } from '../../kernel/author.ts';
import type { TextRef } from '../../kernel/ids.ts';
import type { EpochMs } from '../../kernel/times.ts';
import type { Listed } from '../aids/rules/listed.ts';
import type { AcceptedPlan } from '../planning/rules/accepted.ts';
import type { Language, Panel, Units } from './values.ts';

export interface Bed {
  readonly bed: BedId;
  readonly label: string;
  readonly bay: string;
  readonly ceilingTrack: boolean;
}

/** Who looks after a bed, until when. */
export interface NamedCarers {
  readonly until: EpochMs;
  readonly who: { readonly nurse: StaffId | null; readonly aide: StaffId | null };
}

/** One person's time on the ward on one ward day: [from, to) without the breaks. */
export interface TimeOn extends Period {
  readonly breaks: readonly Period[];
}
/** Who was said to be on, by the date a ward day began on, then by person. */
export type PeopleOn = ReadonlyMap<string, ReadonlyMap<StaffId, TimeOn>>;

/** What the ward's own stream says, folded. */
export interface WardState extends Listed {
  readonly ward: WardId;
  readonly name: string;
  readonly zone: string;
  readonly wardDayFrom: string;
  readonly nightFrom: string;
  readonly nightTo: string;
  readonly panel: Panel;
  readonly units: Units;
  readonly language: Language;
  /** In the order they were added; closed beds are left out. */
  readonly beds: readonly Bed[];
  readonly staff: ReadonlyMap<StaffId, { role: Role; name: TextRef; active: boolean; standing: Standing }>;
  /** Published protocol documents, newest version last; the default protocol is not in it. */
  readonly protocols: readonly { id: string; version: number; document: unknown }[];
  /** Who was last named for a bed and not taken back; past `until` it says nothing any more. */
  readonly carers: ReadonlyMap<BedId, NamedCarers>;
  readonly peopleOn: PeopleOn;
  /** The plan of a ward day that was accepted last; it says nothing of another day. */
  readonly dayPlan: AcceptedPlan | null;
  /** Whom that plan expects and who is expected no more, with the stay that began; null: no stay is known. */
  readonly notExpected: ReadonlyMap<StayId, StayId | null>;
  /** The newest published rules document, or null for the defaults. */
  readonly rules: unknown;
}

/** One period on the ward's clock, as instants: [from, to). */
export interface Period {
  readonly from: EpochMs;
  readonly to: EpochMs;
}

/**
 * The ward's clock as the pure rules see it. Computed from the zone's rules (right across clock
 * changes) and cached a ward day at a time; given in, so that the rules have no clock of their own.
 */
export interface WardCalendar {
  readonly zone: string;
  /** The ward day that holds this instant; 23 to 25 h long on a clock change. */
  wardDay(at: EpochMs): Period;
  /** Whether the night plan applies at this instant, and until when that answer holds. */
  night(at: EpochMs): { readonly is: boolean; readonly until: EpochMs };
  /** The shift that holds this instant, by the ward's roster. */
  shift(at: EpochMs): Period;
}
