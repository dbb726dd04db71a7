/** What the ward enters of its equipment: seen and charged each morning, taken and back, dirty, flat, not there, broken. */
import type { WardId } from '@footboard/shared/kernel/ids';
import { LARKFIELD, MILLBROOK, PEOPLE } from './cast.ts';
import { LIVE_DAY, at } from './days.ts';
import type { Entry } from './entry.ts';
import { LARKFIELD_ITEMS, MILLBROOK_ITEMS } from './equipment-list.ts';

type Tell = (clock: string, by: string, command: string, item: string, more?: object) => Entry;
const teller =
  (day: number, ward: WardId): Tell =>
  (clock, by, command, item, more = {}) => ({
    at: at(day, clock),
    ward,
    by,
    command,
    data: { item: `it-${item}`, ...more },
  });
const stayIn = (bed: string) => PEOPLE.find((one) => one.bed === bed)!.stay;

const listed = (): Entry[] =>
  [
    { ward: LARKFIELD, items: LARKFIELD_ITEMS },
    { ward: MILLBROOK, items: MILLBROOK_ITEMS },
  ].flatMap(({ ward, items }) =>
    items.map((data) => ({ at: at(0, '06:10'), ward, by: 'vera', command: 'add-item', data })),
  );

/** Before the first round somebody walks along: where it stands, wiped, what the battery shows. */
const morning = (day: number, tell: Tell, by: string, items: typeof LARKFIELD_ITEMS): Entry[] =>
  items.flatMap(({ item, is }) => {
    const name = item.replace(/^it-/, '');
    return [
      tell('07:12', by, 'see-item', name, { place: is.home }),
      tell('07:13', by, 'record-cleaning', name, { clean: true }),
      ...(is.powered
        ? [tell('07:14', by, 'read-battery', name, { band: day % 4 === 1 ? 'half' : 'full' })]
        : []),
    ];
  });

/** Taken for somebody and brought back. */
const used = (tell: Tell, by: string, bed: string, from: string, to: string, items: readonly string[]) =>
  items.flatMap((item) => [
    tell(from, by, 'take-item', item, { usedBy: stayIn(bed) }),
    tell(to, by, 'bring-item-back', item),
  ]);

function larkfieldDay(day: number): Entry[] {
  const tell = teller(day, LARKFIELD);
  const even = day % 2 === 0;
  return [
    ...morning(day, tell, day % 3 === 0 ? 'abel' : 'tess', LARKFIELD_ITEMS),
    ...used(tell, 'tess', 'lf-a1', '08:12', '08:34', ['track-alder', 'sling-1']),
    // From the day of her infection steps on they come back to be cleaned.
    ...used(tell, 'dina', 'lf-c6', '09:05', '09:32', ['heron', 'sling-3']),
    tell('10:05', 'dina', 'record-cleaning', 'heron', { clean: true }),
    tell('14:00', 'dina', 'record-cleaning', 'sling-3', { clean: true }),
    ...used(tell, 'abel', 'lf-b1', '10:28', '10:55', ['bittern', 'sling-5']),
    ...used(tell, 'tess', 'lf-a5', '11:15', '11:31', ['plover']),
    tell('12:02', 'abel', 'read-battery', 'heron', { band: 'low' }),
    ...(even
      ? [
          tell('13:24', 'abel', 'read-battery', 'heron', { band: 'flat' }),
          tell('16:40', 'abel', 'read-battery', 'heron', { band: 'full' }),
        ]
      : [
          tell('14:50', 'dina', 'miss-item', 'bittern'),
          tell('15:35', 'otto', 'see-item', 'bittern', { place: 'Cedar' }),
        ]),
    ...used(tell, 'tess', 'lf-a2', '14:10', '14:26', ['track-alder', 'sling-2']),
    ...used(tell, 'dina', 'lf-c6', '17:20', '17:44', ['heron', 'sling-3']),
    tell('18:15', 'dina', 'record-cleaning', 'heron', { clean: true }),
    tell('18:20', 'dina', 'record-cleaning', 'sling-3', { clean: true }),
    tell('19:30', 'abel', 'record-cleaning', 'sling-4', { clean: false }),
    tell('22:40', 'lena', 'read-battery', 'heron', { band: 'half' }),
    ...used(tell, 'mika', 'lf-a1', '23:20', '23:41', ['track-alder', 'sling-1']),
  ];
}

const on = (day: number): Tell => teller(day, LARKFIELD);
/** Out of service and back, a sling kept for one person, an examination that ran out and was made up for. */
function turns(last: number): Entry[] {
  const elm = LARKFIELD_ITEMS.find(({ item }) => item === 'it-track-elm')!;
  const broken = [1, 6, 13, 20, 27].filter((day) => day < last);
  return [
    on(0)('10:40', 'nuri', 'bind-item', 'sling-1', { keptFor: stayIn('lf-a1') }),
    ...broken.flatMap((day) => [
      on(day)('17:05', 'abel', 'take-out-of-service', 'plover', { defect: 'brake-or-wheel' }),
      on(day + 1)('10:20', 'vera', 'return-to-service', 'plover'),
    ]),
    on(4)('09:10', 'tess', 'take-out-of-service', 'sling-7', { defect: 'strap-or-stitching' }),
    on(LIVE_DAY + 2)('11:05', 'vera', 'change-item', 'track-elm', {
      is: { ...elm.is, inspectionDue: '2027-04-29' },
    }),
  ];
}

/** From the first day to the last, both included. */
export const equipment = (last: number): Entry[] => [
  ...listed(),
  ...Array.from({ length: last + 1 }, (_, day) => [
    ...larkfieldDay(day),
    ...morning(day, teller(day, MILLBROOK), 'cleo', MILLBROOK_ITEMS),
  ]).flat(),
  ...turns(last),
];
