/**
 * The invented ward: places, staff and people. Every name, number and story here is made up;
 * nothing is taken from a real ward or person.
 */
import type { Role } from '@footboard/shared/kernel/author';
import type { BedId, PersonId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { UsualWay } from '@footboard/shared/capabilities/stays/values';

export const ZONE = 'Europe/Lisbon';
export const LARKFIELD = 'larkfield' as WardId;
export const MILLBROOK = 'millbrook' as WardId;

export interface DemoBed {
  bed: BedId;
  label: string;
  bay: string;
  ceilingTrack: boolean;
}
const bay = (
  ward: string,
  name: string,
  letter: string,
  count: number,
  tracks: readonly number[],
): DemoBed[] =>
  Array.from({ length: count }, (_, i) => ({
    bed: `${ward}-${letter.toLowerCase()}${i + 1}` as BedId,
    label: `${letter}${i + 1}`,
    bay: name,
    ceilingTrack: tracks.includes(i + 1),
  }));

export const WARDS = [
  {
    ward: LARKFIELD,
    name: 'Larkfield Ward',
    beds: [
      ...bay('lf', 'Alder', 'A', 6, [1, 2]),
      ...bay('lf', 'Birch', 'B', 6, [1, 2]),
      ...bay('lf', 'Cedar', 'C', 6, []),
      ...bay('lf', 'Elm', 'E', 6, [6]),
    ],
  },
  { ward: MILLBROOK, name: 'Millbrook Ward', beds: bay('mb', 'Fern', 'F', 6, [1]) },
] as const;

export interface DemoStaff {
  staff: StaffId;
  name: string;
  role: Role;
}
const s = (staff: string, name: string, role: Role): DemoStaff => ({ staff: staff as StaffId, name, role });
/** On both wards' lists. */
export const STAFF: readonly DemoStaff[] = [
  s('ida', 'Ida Merrow', 'charge-nurse'),
  s('bram', 'Bram Oakley', 'charge-nurse'),
  s('nuri', 'Nuri Halvard', 'nurse'),
  s('pia', 'Pia Sandholm', 'nurse'),
  s('otto', 'Otto Winslade', 'nurse'),
  s('lena', 'Lena Farrowby', 'nurse'),
  s('mika', 'Mika Thornbeck', 'nurse'),
  s('cleo', 'Cleo Marchbank', 'nurse'),
  s('rhea', 'Rhea Coldwater', 'therapist'),
  s('jonas', 'Jonas Petherly', 'therapist'),
  s('tess', 'Tess Applewhite', 'aide'),
  s('abel', 'Abel Kestrow', 'aide'),
  s('dina', 'Dina Rushford', 'aide'),
  s('vera', 'Vera Limewood', 'handling-coordinator'),
  s('hugo', 'Hugo Stanmere', 'manager'),
  s('nell', 'Nell Quarrie', 'records'),
];
export const DAY_NURSES = ['nuri', 'pia', 'otto', 'ida'] as readonly string[];
export const NIGHT_NURSES = ['lena', 'mika', 'bram'] as readonly string[];
export const THERAPISTS = ['rhea', 'jonas'] as readonly string[];
export const AIDES = ['tess', 'abel', 'dina'] as readonly string[];

/** How far up the stages the person really gets: 0 none, then Upright, Edge, Stand, Turn, Walk. */
export type Reach = 0 | 1 | 2 | 3 | 4 | 5;

export interface DemoPerson {
  person: PersonId;
  stay: StayId;
  name: string;
  born: string;
  bed: BedId;
  /** Day of the week (0 to 6) of arrival; 0 people are there from the first morning. */
  arrives: number;
  /** Day of leaving, if within the week. */
  leaves?: number;
  usual: UsualWay;
  kg?: number;
  kgHow?: 'measured' | 'estimated';
  /** Reach on the first day and on the last: the week climbs or falls between them. */
  from: Reach;
  to: Reach;
  waits: 'yes' | 'no' | 'varies';
  /** What sets this person apart; the plot writes the entries. */
  story?:
    | 'theatre'
    | 'one-leg'
    | 'heavy'
    | 'comfort'
    | 'clinicians-plan'
    | 'falls'
    | 'quiet'
    | 'drain'
    | 'delirium'
    | 'dizzy'
    | 'long-hold'
    | 'on-own'
    | 'transfers'
    | 'refuses';
}

const walks: UsualWay = { moves: 'walks', transfers: 'alone', stairs: 'yes' };
const frame: UsualWay = { moves: 'frame', transfers: 'alone', stairs: 'no' };
const helped: UsualWay = { moves: 'frame', transfers: 'helped', stairs: 'no' };
const wheelchair: UsualWay = { moves: 'wheelchair', transfers: 'helped', stairs: 'no' };
const lifted: UsualWay = { moves: 'wheelchair', transfers: 'lifted', stairs: 'no' };

let count = 0;
const p = (
  bed: string,
  name: string,
  born: string,
  usual: UsualWay,
  kg: number | undefined,
  from: Reach,
  to: Reach,
  extra: Partial<DemoPerson> = {},
): DemoPerson => {
  count += 1;
  return {
    person: `p-${String(count).padStart(3, '0')}` as PersonId,
    stay: `st-${String(count).padStart(3, '0')}` as StayId,
    name,
    born,
    bed: bed as BedId,
    arrives: 0,
    usual,
    ...(kg === undefined ? {} : { kg }),
    from,
    to,
    waits: 'yes',
    ...extra,
  };
};

export const PEOPLE: readonly DemoPerson[] = [
  p('lf-a1', 'Edda Quillan', '1938-02-11', lifted, 71, 0, 1),
  p('lf-a2', 'Marten Osgrove', '1944-07-03', wheelchair, 82, 1, 2),
  p('lf-a3', 'Sunniva Tarn', '1951-11-20', walks, 64, 3, 5, { story: 'on-own' }),
  p('lf-a4', 'Basil Underhay', '1947-05-30', frame, 77, 3, 4),
  p('lf-a5', 'Greta Lindmoor', '1940-09-14', helped, 59, 2, 3, { waits: 'varies', story: 'delirium' }),
  p('lf-a6', 'Ivo Brackendale', '1956-01-08', walks, 90, 4, 5),
  p('lf-b1', 'Odalys Wren', '1949-03-27', walks, 142, 2, 3, { story: 'heavy' }),
  p('lf-b2', 'Tobiah Merle', '1953-12-02', walks, 84, 2, 4, { story: 'one-leg' }),
  p('lf-b3', 'Petra Hollowell', '1945-06-18', frame, 66, 4, 5),
  p('lf-b4', 'Auberon Skye', '1942-10-25', frame, 73, 3, 3, { story: 'dizzy' }),
  p('lf-b5', 'Maude Ferring', '1936-04-09', helped, 55, 2, 1, { story: 'falls' }),
  p('lf-c1', 'Linus Garrowby', '1961-08-16', walks, 88, 5, 5, { leaves: 5 }),
  p('lf-c2', 'Yara Pellworth', '1958-02-22', walks, 70, 3, 5, { arrives: 1, story: 'theatre' }),
  p('lf-c3', 'Cosmo Veld', '1950-07-29', frame, 79, 3, 4, { story: 'refuses' }),
  p('lf-c4', 'Hedwig Amberly', '1939-11-05', helped, 61, 2, 3, { story: 'drain' }),
  p('lf-c5', 'Rufus Tideswell', '1948-09-01', walks, 76, 4, 4, { story: 'transfers' }),
  p('lf-c6', 'Elspet Norring', '1943-01-19', wheelchair, undefined, 1, 1),
  p('lf-e1', 'Anselm Crowe', '1955-05-11', walks, 93, 4, 5),
  p('lf-e2', 'Brida Fallow', '1946-12-24', frame, 68, 3, 3, { story: 'quiet' }),
  p('lf-e3', 'Caspian Dole', '1952-03-15', walks, 81, 3, 4, { story: 'long-hold' }),
  p('lf-e4', 'Dorte Hazelrigg', '1935-08-07', lifted, 52, 0, 0, { story: 'comfort' }),
  p('lf-e5', 'Fenwick Arlo', '1960-10-13', walks, 85, 2, 2, { story: 'clinicians-plan' }),
  p('lf-c1', 'Jorah Penmark', '1954-06-06', walks, 78, 3, 3, { arrives: 6 }),
  p('mb-f1', 'Sidony Larch', '1941-04-28', frame, 63, 3, 4),
  p('mb-f2', 'Wendel Stroud', '1957-09-09', walks, 87, 4, 5),
  p('mb-f3', 'Isaura Plumley', '1937-12-30', helped, 58, 2, 2),
];
