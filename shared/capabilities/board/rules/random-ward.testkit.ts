/** Wards with rules of their own for property tests: what is off by default turned on, other rosters, other zones. */
import * as fc from 'fast-check';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES, rulesDocument } from '../../wards/rules/rules-document.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';
import { setUpWard, WARD, WardLog } from './history.testkit.ts';

export interface RandomWard {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  /** As a failing property prints it. */
  readonly [fc.toStringMethod]: () => string;
}

/** What the random wards differ in. Each value is one that the rules' schema admits. */
const settings = {
  zone: ['Europe/Berlin', 'Europe/Berlin', 'Australia/Lord_Howe', 'Asia/Kolkata', 'America/St_Johns'],
  shiftsFrom: [
    ['07:00', '19:00'],
    ['06:00', '14:00', '22:00'],
    ['07:00', '13:30', '19:00', '23:00'],
  ],
  earlyWarning: [false, true],
  criticalCare: [false, true],
  eachShift: [false, true],
  loneCarerWithBelt: [false, true],
  twoHundredPoundsIsHeavier: [true, false],
  graceMinutes: [0, 30],
  debtFreeHours: [4, 1],
  ownProtocol: [false, true],
} as const;
type Settings = { [K in keyof typeof settings]: (typeof settings)[K][number] };

/** The default protocol under another name and version, as a ward would publish its own. */
export const OWN_PROTOCOL = { ...DEFAULT_PROTOCOL, id: 'ours', version: 1 };

function made(s: Settings): RandomWard {
  const log = new WardLog();
  setUpWard(log);
  log.add(`ward/${WARD}`, { type: 'ward-changed', payload: { zone: s.zone } });
  const limit = <T>(was: T, value: unknown): T => ({ ...was, value });
  const { earlyWarning, criticalCare, validity, handling, roster, activity } = DEFAULT_RULES;
  const document = {
    ...DEFAULT_RULES,
    version: 2,
    earlyWarning: { ...earlyWarning, on: limit(earlyWarning.on, s.earlyWarning) },
    criticalCare: { ...criticalCare, on: limit(criticalCare.on, s.criticalCare) },
    validity: {
      ...validity,
      eachShift: limit(validity.eachShift, s.eachShift),
      graceMinutes: limit(validity.graceMinutes, s.graceMinutes),
    },
    handling: {
      ...handling,
      loneCarerWithBelt: limit(handling.loneCarerWithBelt, s.loneCarerWithBelt),
      twoHundredPoundsIsHeavier: limit(handling.twoHundredPoundsIsHeavier, s.twoHundredPoundsIsHeavier),
    },
    roster: { ...roster, shiftsFrom: limit(roster.shiftsFrom, [...s.shiftsFrom]) },
    activity: { ...activity, debtFreeHours: limit(activity.debtFreeHours, s.debtFreeHours) },
  };
  rulesDocument.parse(document);
  log.add(`ward/${WARD}`, { type: 'rules-published', payload: { version: 2, document } });
  if (s.ownProtocol) {
    const { id, version } = OWN_PROTOCOL;
    log.add(`ward/${WARD}`, {
      type: 'protocol-published',
      payload: { id, version, document: OWN_PROTOCOL },
    });
  }
  const ward = foldWard(WARD, log.events)!;
  return { ward, calendar: wardCalendar(ward), [fc.toStringMethod]: () => JSON.stringify(s) };
}

/** So few that each is made once: each setting is met with each value of most others. */
const HOW_MANY = 24;
const known = new Map<number, RandomWard>();
function numbered(n: number): RandomWard {
  const ward =
    known.get(n) ??
    made(
      Object.fromEntries(
        Object.entries(settings).map(([k, all], place) => [
          k,
          all[Math.floor((n * (place + 3)) / (place + 1)) % all.length],
        ]),
      ) as Settings,
    );
  known.set(n, ward);
  return ward;
}

/** A ward that differs from the default one in some of its settings, or in none. */
export const anyWard: fc.Arbitrary<RandomWard> = fc.integer({ min: 0, max: HOW_MANY - 1 }).map(numbered);
