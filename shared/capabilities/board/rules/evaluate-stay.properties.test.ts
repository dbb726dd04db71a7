/** Design rules 1, 2 and 7 over random histories: the same facts, the same view, and never less help. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { stayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { canonical, hold, hours, recordOf, trigger, type Told } from './history.testkit.ts';
import { lessHelp } from './less-help.testkit.ts';
import { asRecorded, histories, oneMore } from './random-history.testkit.ts';
import { anyWard, type RandomWard } from './random-ward.testkit.ts';

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const view = (record: StayRecord, t: number, { ward, calendar }: RandomWard) =>
  evaluateStay(record, ward, calendar, t);

/** Entered at once, and entered in the order told, most of them late. */
const told = fc.oneof(histories, histories.map(asRecorded));

describe('the view of a stay', { timeout: patience }, () => {
  it('BOARD-1 never throws and always fits the wire', () => {
    fc.assert(
      fc.property(told, at, anyWard, (all, t, w) => {
        expect(stayView.safeParse(view(recordOf(all), t, w).view).error).toBeUndefined();
      }),
      runs(150),
    );
  });

  it('BOARD-2 is the same at every instant until the next change it names', () => {
    fc.assert(
      fc.property(told, at, fc.double({ min: 0, max: 1, noNaN: true }), anyWard, (all, t, part, w) => {
        const record = recordOf(all);
        const { view: now, nextChange } = view(record, t, w);
        const until = nextChange ?? t + 1_000 * 3_600_000;
        expect(until).toBeGreaterThan(t);
        const later = Math.min(until - 1, t + Math.floor((until - t) * part));
        expect(canonical(view(record, later, w).view)).toBe(canonical(now));
        expect(canonical(view(record, until - 1, w).view)).toBe(canonical(now));
      }),
      runs(150),
    );
  });

  it('BOARD-3 does not depend on the order in which the entries arrived', () => {
    fc.assert(
      fc.property(
        told.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray([...all], { minLength: all.length })),
        ),
        at,
        anyWard,
        ([all, shuffled], t, w) => {
          const one = view(recordOf(all), t, w).view;
          const other = view(recordOf(shuffled), t, w).view;
          expect(canonical(other)).toBe(canonical(one));
        },
      ),
      runs(150),
    );
  });
});

describe('one more restriction', { timeout: patience }, () => {
  const added = fc.oneof(
    fc
      .tuple(
        fc.constantFrom(
          'fall',
          'faint',
          'sedation',
          'new-confusion',
          'return-from-surgery',
          'suspected-clot',
        ),
        fc.integer({ min: 0, max: 320 }),
      )
      .map(([kind, q]) => ({ ...trigger(kind, q / 4), id: 'added' })),
    fc
      .tuple(fc.constantFrom('walking', 'standing', 'out-of-bed'), fc.integer({ min: 0, max: 320 }))
      .map(([scope, q]) => ({
        ...hold(q / 4, scope, 200),
        id: 'added',
        payload: { ...(hold(q / 4, scope, 200).payload as object), hold: 'hold-added' },
      })),
  );
  it('BOARD-4 never lowers the help of any task, whenever it occurred and whoever said it', () => {
    fc.assert(
      fc.property(told, added, at, anyWard, (all, extra, t, w) => {
        const before = view(recordOf(all), t, w).view;
        expect(lessHelp(before, view(recordOf([...all, extra]), t, w).view)).toEqual([]);
      }),
      runs(150),
    );
  });
});

describe('one more entry, told after all others', { timeout: patience }, () => {
  const withOneMore = histories.map(asRecorded).chain((all) => fc.tuple(fc.constant(all), oneMore(all)));
  const known = (all: readonly Told[]) => Math.max(...all.map((x) => x.recorded!));
  const seen = ([all, extra]: readonly [readonly Told[], Told], t: number, w: RandomWard) => {
    const last = { ...extra, recorded: Math.max(known(all) + 1 / 3600, (extra.at ?? 0) + 1 / 60) };
    return { before: view(recordOf(all), t, w).view, after: view(recordOf([...all, last]), t, w).view };
  };
  const targetOf = (extra: Told) => (extra.payload as { target?: string }).target;
  /** When what it speaks of occurred: itself, or the entry changed, by every time ever given for that. */
  function about(all: readonly Told[], extra: Told): number {
    const moved = (x: Told) => Date.parse((x.payload as { occurred?: string }).occurred ?? '');
    const times: number[] = [];
    let entry = extra;
    for (let id = targetOf(entry); id !== undefined; id = targetOf(entry)) {
      times.push(moved(entry));
      entry = all.find((x) => x.id === id)!;
    }
    return Math.min(hours(entry.at ?? 0), ...times.filter((x) => !Number.isNaN(x)));
  }

  it('BOARD-8 never lowers help when its author may not free', () => {
    fc.assert(
      fc.property(withOneMore, at, anyWard, (pair, t, w) => {
        const [, extra] = pair;
        fc.pre(!['nurse', 'therapist', 'charge-nurse'].includes(extra.role!));
        const { before, after } = seen(pair, t, w);
        expect(lessHelp(before, after)).toEqual([]);
      }),
      runs(150),
    );
  });

  it('BOARD-9 never lowers help when it is late or changes an entry and something at or after it is open', () => {
    fc.assert(
      fc.property(withOneMore, at, anyWard, (pair, t, w) => {
        const [all, extra] = pair;
        const { before, after } = seen(pair, t, w);
        const from = about(all, extra);
        const spokenOf = targetOf(extra);
        const changes = ['retraction-made', 'correction-made', 'entry-confirmed'];
        const isChange = (id: string) => changes.includes(all.find((x) => x.id === id)!.type);
        const open = [
          ...before.trust.openTriggers.filter((o) => o.kind !== 'arrival' && !isChange(o.event)),
          ...before.holds.map((h) => ({ event: h.event, at: h.placedAt })),
        ];
        fc.pre(open.some((o) => o.at >= from && o.event !== spokenOf));
        expect(lessHelp(before, after)).toEqual([]);
      }),
      runs(80),
    );
  });
});
