/** The whole play as one ordered list of entries: the seeded week, then the days that follow live. */
import { MINUTE } from '@footboard/shared/kernel/times';
import { besidePlans } from './beside.ts';
import { LARKFIELD, MILLBROOK, PEOPLE, STAFF, WARDS, ZONE } from './cast.ts';
import { LIVE_DAY, at } from './days.ts';
import type { Entry } from './entry.ts';
import { equipment } from './equipment.ts';
import { chance } from './random.ts';
import { ordinaryDays } from './routine.ts';
import { measures } from './measures.ts';
import { stories } from './stories.ts';
import { wardDays } from './ward-days.ts';

/** Setting up both wards and their staff; before the first person arrives. */
export function settingUp(): Entry[] {
  const start = at(0, '06:00');
  return WARDS.flatMap(({ ward, name, beds }) => [
    {
      at: start,
      ward,
      by: 'first-run',
      command: 'set-up-ward',
      data: { name, zone: ZONE, wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00', beds: [...beds] },
    },
    ...STAFF.map((one) => ({
      at: start,
      ward,
      by: 'first-run',
      command: 'add-staff-member',
      data: { ...one },
    })),
  ]);
}

function arrivals(): Entry[] {
  return PEOPLE.map((who, index) => ({
    at: who.arrives === 0 ? at(0, '06:20') + index * MINUTE : at(who.arrives, '13:05') + index * MINUTE,
    ward: who.bed.startsWith('mb-') ? MILLBROOK : LARKFIELD,
    by: 'ida',
    command: 'begin-stay',
    data: {
      stay: who.stay,
      person: who.person,
      bed: who.bed,
      from: who.arrives === 0 ? 'ward' : 'emergency',
      identity: { name: who.name, born: who.born, recordNumber: `DEMO-${who.person.slice(2)}` },
      usual: who.usual,
      ...(who.kg === undefined ? {} : { weight: { kg: who.kg, how: 'measured' } }),
    },
  }));
}

function leavers(): Entry[] {
  return PEOPLE.filter((who) => who.leaves !== undefined).map((who) => ({
    at: at(who.leaves!, '20:55'),
    ward: LARKFIELD,
    by: 'ida',
    command: 'end-stay',
    data: { stay: who.stay, bed: who.bed, to: 'home' },
  }));
}

/** Entries in the order they are made. The same seed gives the same list. */
export function plot(seed: number, liveDays = 21): Entry[] {
  const luck = chance(seed);
  const ordinary = PEOPLE.flatMap((who) => ordinaryDays(who, luck, 0, LIVE_DAY + liveDays));
  const last = LIVE_DAY + liveDays;
  const later = [
    ...arrivals(),
    ...leavers(),
    ...stories(),
    ...measures(),
    ...wardDays(last),
    ...besidePlans(last),
    ...equipment(last),
    ...ordinary,
  ];
  return [...settingUp(), ...later.toSorted((a, b) => a.at - b.at)];
}
