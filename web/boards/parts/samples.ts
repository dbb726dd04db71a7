/** Invented answers for the pictures on the page of parts. */
import type { EventId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { ForecastPage } from '@footboard/shared/wire/forecast';
import type { StayCourse, WardHours } from '@footboard/shared/wire/pictures';
import { NOW, TIERS } from './rows.ts';

const HOUR = 3_600_000;
const at = (hours: number) => NOW + hours * HOUR;
const event = (id: string) => id as EventId;
const span = (
  from: number,
  to: number,
  tier: string,
  trust: StayCourse['standing'][number]['trust'],
  away = false,
) => ({
  from: at(from),
  to: at(to),
  tier,
  notch: TIERS.includes(tier) ? TIERS.indexOf(tier) / (TIERS.length - 1) : null,
  trust,
  away,
  facts: [],
});

export const COURSE: StayCourse = {
  ward: 'invented' as WardId,
  stay: 's1' as StayId,
  position: 40,
  from: at(-70),
  to: at(0),
  whole: true,
  ended: false,
  tiers: TIERS.map((word, i) => ({ word, notch: i / (TIERS.length - 1) })),
  standing: [
    span(-70, -66, 'Not known', 'not-known'),
    span(-66, -44, 'Upright', 'current'),
    span(-44, -41, 'Upright', 're-check'),
    span(-41, -30, 'Stand', 'current'),
    span(-30, -26, 'Stand', 'current', true),
    span(-26, -20, 'Stand', 're-check'),
    span(-20, -12, 'Edge', 'current'),
    span(-12, 0, 'Turn', 'current'),
  ],
  holds: [
    { hold: 'a', scope: 'walking', reason: 'order', from: at(-66), to: at(-40), facts: [] },
    { hold: 'b', scope: 'out-of-bed', reason: 'after-procedure', from: at(-26), to: at(-20), facts: [] },
    { hold: 'c', scope: 'walking', reason: 'waiting-for-review', from: at(-22), to: null, facts: [] },
  ],
  sessions: [
    { event: event('a1'), at: at(-64), outcome: 'done', activity: 'back-raised', group: null },
    { event: event('a2'), at: at(-60), outcome: 'not-done', activity: null, group: 'said-no' },
    { event: event('a3'), at: at(-58), outcome: 'part', activity: 'edge-sit', group: null },
    { event: event('a4'), at: at(-18), outcome: 'stopped', activity: 'stand', group: null },
    { event: event('a5'), at: at(-8), outcome: 'done', activity: 'chair', group: null },
    { event: event('a6'), at: at(-3), outcome: 'done', activity: 'toilet', group: null },
  ],
  triggers: [
    { event: event('b1'), at: at(-44), kind: 'faint' },
    { event: event('b2'), at: at(-26), kind: 'return-from-surgery' },
  ],
  days: [
    { from: at(-70), to: at(-53), recorded: true, goal: { met: true, proposed: true }, facts: [] },
    { from: at(-53), to: at(-29), recorded: false, goal: { met: null, proposed: false }, facts: [] },
    { from: at(-29), to: at(-5), recorded: true, goal: { met: false, proposed: false }, facts: [] },
    { from: at(-5), to: at(0), recorded: true, goal: { met: true, proposed: false }, facts: [] },
  ],
};

const DONE = [1, 3, 2, 4, 5];
export const DAY: WardHours = {
  ward: 'invented' as WardId,
  day: '2026-11-25',
  from: at(-5),
  to: at(19),
  at: at(-0.2),
  stays: 12,
  hours: Array.from({ length: 24 }, (_, i) => {
    const done = DONE[i];
    const begun = done !== undefined;
    return {
      from: at(i - 5),
      to: at(i - 4),
      begun,
      done: done ?? 0,
      part: i === 2 ? 1 : 0,
      stopped: i === 3 ? 1 : 0,
      notDone: i === 1 ? { 'said-no': 2 } : i === 4 ? { 'no-people': 1 } : ({} as Record<string, number>),
      nothingYet: begun ? 10 - 2 * i : null,
    };
  }),
};

/** Two peaks above the two lifts there are; one of them nobody has spoken of since. */
const wantedAt = (i: number) =>
  0.4 + 2.4 * Math.exp(-(((i - 8) / 4) ** 2)) + 1.2 * Math.exp(-(((i - 40) / 6) ** 2));
const lateAt = (i: number) => Math.min(0.95, Math.max(0.02, (wantedAt(i) - 0.8) / 2.2));
export const FORECAST: ForecastPage = {
  ward: 'invented' as WardId,
  position: 40,
  from: at(0),
  to: at(24),
  slotMinutes: 15,
  lateMinutes: 10,
  record: { days: 12, moves: 340, fewDays: 7, uses: 0 },
  runs: 2_000,
  people: 'partly',
  groups: [
    {
      group: 'lift',
      listed: true,
      slots: Array.from({ length: 96 }, (_, i) => ({
        from: at(i / 4),
        wanted: wantedAt(i),
        wantedTenth: Math.ceil(wantedAt(i) + 0.6),
        sure: i < 24 ? 2 : 1,
        most: 2,
        asked: wantedAt(i),
        late:
          i > 70
            ? null
            : { chance: lateAt(i), low: Math.max(0, lateAt(i) - 0.1), high: Math.min(1, lateAt(i) + 0.08) },
      })),
    },
  ],
  clashes: [],
  waits: [],
  helps: [],
  asked: 60,
  late: 9,
  leftOut: [],
};
