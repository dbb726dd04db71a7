import { describe, expect, it } from 'vitest';
import { MINUTE } from '@footboard/shared/kernel/times';
import { foldItem, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import { liftsOf } from '@footboard/shared/capabilities/aids/rules/lifts';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { foldWard } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import { LARKFIELD, MILLBROOK, WARDS } from './cast.ts';
import { at, LIVE_FROM } from './days.ts';
import type { Decided } from './ledger.ts';
import { Ledger } from './ledger.ts';
import { plot } from './plot.ts';

/** The seeded week, entry by entry, through the real deciders. */
function playWeek(seed: number) {
  const ledger = new Ledger();
  const decided: Decided[] = [];
  const refused: string[] = [];
  const entries = plot(seed).filter((entry) => entry.at <= LIVE_FROM());
  for (const entry of entries) {
    const came = ledger.decide(entry);
    if (came === null) continue;
    if ('refused' in came) refused.push(`${entry.command} ${came.refused}`);
    else decided.push(came);
  }
  return { entries, events: decided.flatMap((one) => one.events), refused };
}

describe('the invented week', () => {
  const week = playWeek(20_261_020);
  const ofType = (type: string) => week.events.filter((event) => event.type === type);

  it('given one seed, plays the same week; given another, another', () => {
    const list = (seed: number) =>
      JSON.stringify(plot(seed).map((entry) => [entry.at, entry.by, entry.command]));
    expect(list(1)).toBe(list(1));
    expect(list(1)).not.toBe(list(2));
  });

  it.each([20_261_020, 7, 99])(
    'given seed %d, is taken by the real deciders but for a few refusals',
    (seed) => {
      const { events, refused } = playWeek(seed);
      expect(events.length).toBeGreaterThan(1_000);
      expect(refused.length / events.length).toBeLessThan(0.03);
      // Nothing may fail to arrive: these make the ward.
      expect(
        refused.filter((one) => /set-up|begin-stay|swap|transfer|correction|retraction/.test(one)),
      ).toEqual([]);
    },
  );

  it('has 24 beds and a small second ward, every event marked as of the demo', () => {
    expect(WARDS.map(({ ward, beds }) => [ward, beds.length])).toEqual([
      [LARKFIELD, 24],
      [MILLBROOK, 6],
    ]);
    expect(week.events.every((event) => event.source.kind === 'demo')).toBe(true);
  });

  it('tells of sessions, refusals, triggers, a fall with its hold, a swap, a correction and a retraction', () => {
    const outcomes = ofType('session-recorded').map(
      (event) => (event.payload as { session: { outcome: string } }).session.outcome,
    );
    for (const outcome of ['done', 'part', 'stopped', 'not-done']) expect(outcomes).toContain(outcome);
    expect(
      ofType('trigger-recorded').some((event) => (event.payload as { kind: string }).kind === 'fall'),
    ).toBe(true);
    expect(ofType('hold-placed').length).toBeGreaterThanOrEqual(2);
    expect(ofType('hold-ended').length).toBeGreaterThanOrEqual(1);
    expect(ofType('stay-moved').filter((event) => 'swappedWith' in (event.payload as object))).toHaveLength(
      2,
    );
    expect(ofType('correction-made')).toHaveLength(1);
    expect(ofType('retraction-made')).toHaveLength(1);
  });

  it('tells what stands beside the plans, and what the ward does each day', () => {
    const kinds = [
      'isolation-set',
      'leaving-expected',
      'therapist-line-set',
      'visit-taken',
      'visit-handed-over',
      'visit-given-back',
      'carers-named',
      'people-on-set',
      'huddle-held',
      'action-agreed',
      'action-closed',
      'arrival-expected',
      'expected-arrival-closed',
    ];
    expect(kinds.filter((kind) => ofType(kind).length === 0)).toEqual([]);
    // A huddle each morning but the first, and the one of the day it goes live is still to come.
    expect(ofType('huddle-held')).toHaveLength(6);
    const triggers = ofType('trigger-recorded').map((event) => (event.payload as { kind: string }).kind);
    expect(triggers.filter((kind) => kind === 'board-wrong')).toHaveLength(3);
    const sessions = ofType('session-recorded').map(
      (event) => (event.payload as { session: { left?: string; backToBedBy?: string } }).session,
    );
    expect(sessions.some(({ left, backToBedBy }) => left === 'chair' && backToBedBy !== undefined)).toBe(
      true,
    );
    expect(
      week.refused.filter((one) => /visit|huddle|action|carers|arrival|isolation|leaving|line/.test(one)),
    ).toEqual([]);
  });

  it('tells of equipment that is taken, dirty, flat, not there, broken, returned, and out of date', () => {
    const items = week.events.filter((event) => event.type.startsWith('item-'));
    const kinds = new Set(items.map(({ type }) => type));
    expect([...kinds].toSorted()).toEqual([
      'item-added',
      'item-back',
      'item-bound',
      'item-cleaning',
      'item-in-service',
      'item-not-there',
      'item-out-of-service',
      'item-seen',
      'item-taken',
    ]);
    const bands = new Set(ofType('battery-read').map(({ payload }) => (payload as { band: string }).band));
    expect([...bands].toSorted()).toEqual(['flat', 'full', 'half', 'low']);
    expect(week.refused.filter((one) => /item|battery|cleaning|service/.test(one))).toEqual([]);
  });

  it('has fewer lifts to use at one time of the day than at another', () => {
    const logged = week.events
      .filter(({ ward }) => ward === LARKFIELD)
      .map(
        (event, i): LoggedEvent => ({ ...event, position: i + 1, recorded: event.entered }) as LoggedEvent,
      );
    const ward = foldWard(
      LARKFIELD,
      logged.filter(({ stream }) => stream.startsWith('ward/')),
      null,
    )!;
    const usable = (until: number) => {
      const stateOf = (id: string) =>
        logged
          .filter(({ stream, occurred }) => stream === `item/${id}` && occurred <= until)
          .reduce(foldItem, NOTHING_SEEN);
      const items = new Map([...ward.items.keys()].map((id) => [id, stateOf(id)]));
      return liftsOf({ ward, items, t: until, day: localDate(ward.zone, until) }, () => undefined)!;
    };
    // Day 6: Plover is still whole, Elm out of date; Heron is flat at 14:00, Plover broken at 18:00.
    expect(usable(at(6, '13:00'))).toMatchObject({ usable: 5, all: 6 });
    expect(usable(at(6, '14:00'))).toMatchObject({ usable: 4 });
    expect(usable(at(6, '17:30'))).toMatchObject({ usable: 3, inUse: 1 });
    expect(usable(LIVE_FROM())).toMatchObject({ usable: 3, inUse: 1, unknown: 0, all: 6 });
  });

  it('moves one person to the other ward, each stay naming the other', () => {
    const left = ofType('stay-ended').find((event) => 'next' in (event.payload as object))!;
    const begun = ofType('stay-begun').find(
      (event) => event.ward === MILLBROOK && 'previous' in (event.payload as object),
    )!;
    expect((left.payload as { next: { stay: string } }).next.stay).toBe(
      (begun.payload as { stay: string }).stay,
    );
    expect((begun.payload as { previous: { stay: string } }).previous.stay).toBe(
      left.stream.replace('stay/', ''),
    );
  });

  // IANA tz database: Europe/Lisbon goes from +01:00 to +00:00 on 2026-10-25 at 01:00 UTC, so 01:40 comes twice.
  it('has two walks at 01:40 in the hour that the clock change repeats, an hour apart', () => {
    const first = Date.UTC(2026, 9, 25, 0, 40);
    const second = Date.UTC(2026, 9, 25, 1, 40);
    const walked = ofType('session-recorded').map((event) => event.occurred);
    expect(walked).toContain(first);
    expect(walked).toContain(second);
    expect(second - first).toBe(60 * MINUTE);
  });
});
