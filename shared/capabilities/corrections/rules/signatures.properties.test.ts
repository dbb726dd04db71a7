/** Entries under a name that nobody had checked, and the signatures under them, over random stays. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs, whole } from '../../../kernel/runs.testkit.ts';
import type { Role } from '../../../kernel/author.ts';
import { anyEvent, STAY_EVENTS } from '../../board/rules/any-history.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  canonical,
  confirmation,
  cosignature,
  hours,
  recordOf,
  unconfirmed,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { lesserAid, lessHelp } from '../../board/rules/less-help.testkit.ts';
import { asRecorded, calm, histories, oneMore } from '../../board/rules/random-history.testkit.ts';
import { anyWard, type RandomWard } from '../../board/rules/random-ward.testkit.ts';
import type { StartWord } from '../../assessments/rules/may-start.ts';

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const qualified = fc.constantFrom<Role>('nurse', 'therapist', 'charge-nurse');
const told = fc.oneof(histories, calm).map(asRecorded);
const view = (all: readonly Told[], t: number, w: RandomWard) =>
  evaluateStay(recordOf(all), w.ward, w.calendar, t).view;
/** The entry told after all others. */
const after = (all: readonly Told[], one: Told): readonly Told[] => [
  ...all,
  {
    ...one,
    id: 'added',
    recorded: Math.max(...all.map((x) => x.recorded! + 1 / 3600), (one.at ?? 0) + 1 / 60),
  },
];
/** As the server records it, and as only a forged log would have it: with the role that was claimed. */
const claimed = (one: Told, role: Role, forged: boolean): Told =>
  forged ? { ...unconfirmed(one, role), role } : unconfirmed(one, role);

/** A weight, or what changes the entry of one. */
const isOfWeight = (one: Told, all: readonly Told[]): boolean => {
  const { type, target } = one.payload as { type?: string; target?: string };
  const types = [one.type, type, all.find((x) => x.id === target)?.type];
  return types.includes('weight-recorded');
};

const WORDS: readonly StartWord[] = ['may-start', 'ask-first', 'not-now'];

describe('an entry under a name that nobody had checked', { timeout: patience }, () => {
  const extra = told.chain((all) =>
    fc.tuple(fc.constant(all), fc.oneof(oneMore(all), anyEvent, anyEvent), qualified, fc.boolean()),
  );

  it('CLAIMED-1 never lowers the help of any task, whatever it is and whoever it names', () => {
    fc.assert(
      fc.property(extra, at, anyWard, ([all, one, role, forged], t, w) => {
        const before = view(all, t, w);
        const now = view(after(all, claimed(one, role, forged)), t, w);
        // From the ward's bariatric weight the published bariatric table takes the place of the ordinary one: another way of moving.
        expect(lessHelp(before, now, isOfWeight(one, all) ? lesserAid : undefined)).toEqual([]);
        const words = before.mayStart && now.mayStart && [before.mayStart.word, now.mayStart.word];
        expect(words && words.toSorted((a, b) => WORDS.indexOf(a) - WORDS.indexOf(b))).toEqual(words);
      }),
      runs(400),
    );
  });
  it('is of every kind that a stay knows', () => {
    const drawn = new Set(fc.sample(anyEvent, 3_000).map((one) => one.type));
    expect(STAY_EVENTS.map((e) => e.name).filter((name) => !drawn.has(name))).toEqual([]);
  });
});

describe('a confirmation', { timeout: patience }, () => {
  /** A stay with an entry of somebody qualified that waits for its author, known by the id "waiting". */
  const waiting = fc.tuple(fc.oneof(histories, calm), fc.nat(), qualified, fc.nat()).chain(([all, n, role]) =>
    fc.tuple(oneMore(all), fc.integer({ min: 1, max: all.length })).map(([one, place]) => {
      const target: Told = { ...unconfirmed(one, role), id: 'waiting' };
      return { role, n, all: asRecorded([...all.slice(0, place), target, ...all.slice(place)]) };
    }),
  );
  const same = (all: readonly Told[], one: Told, t: number, w: RandomWard): void => {
    const { version: _before, ...before } = view(all, t, w);
    const { version: _now, ...now } = view(after(all, one), t, w);
    expect(canonical(now)).toBe(canonical(before));
  };
  const when = fc.integer({ min: 0, max: 320 }).map((q) => q / 4);

  it('CLAIMED-2 changes nothing unless it is by the person the entry names, signed in', () => {
    fc.assert(
      fc.property(waiting, when, at, anyWard, fc.boolean(), ({ all, role }, h, t, w, another) => {
        const by = confirmation(h, 'waiting', role);
        same(all, another ? { ...by, staff: 'staff-somebody-else' } : claimed(by, role, true), t, w);
      }),
      runs(60),
    );
  });

  it('CLAIMED-2 changes nothing of an entry that waits for none', () => {
    fc.assert(
      fc.property(told, fc.nat(), when, at, anyWard, (all, n, h, t, w) => {
        const target = all[n % all.length]!;
        fc.pre(!target.source?.unconfirmed);
        same(all, { ...confirmation(h, target.id!), staff: `staff-${target.role ?? 'nurse'}` }, t, w);
      }),
      runs(60),
    );
  });

  it('CLAIMED-2 by somebody who may not free changes nothing', () => {
    fc.assert(
      fc.property(waiting, when, at, anyWard, ({ all, role }, h, t, w) => {
        same(all, { ...confirmation(h, 'waiting', 'aide'), staff: `staff-${role}` }, t, w);
      }),
      runs(60),
    );
  });

  it('CLAIMED-3 never lowers help while something at or after the entry is open', () => {
    const seen = { open: 0 };
    fc.assert(
      fc.property(waiting, when, at, anyWard, ({ all, role }, h, t, w) => {
        const before = view(all, t, w);
        const from = hours(all.find((x) => x.id === 'waiting')!.at ?? 0);
        const isChange = (id: string) =>
          ['retraction-made', 'correction-made', 'entry-confirmed'].includes(
            all.find((x) => x.id === id)!.type,
          );
        const open = [
          ...before.trust.openTriggers.filter((o) => o.kind !== 'arrival' && !isChange(o.event)),
          ...before.holds.map((x) => ({ event: x.event, at: x.placedAt })),
        ];
        fc.pre(open.some((o) => o.at >= from && o.event !== 'waiting'));
        seen.open += 1;
        expect(lessHelp(before, view(after(all, confirmation(h, 'waiting', role)), t, w))).toEqual([]);
      }),
      runs(80),
    );
    expect(seen.open).toBeGreaterThan(whole ? 20 : 0);
  });
});

describe('a second signature', { timeout: patience }, () => {
  it('COSIGN-1 changes nothing of the row, whatever it is under', () => {
    fc.assert(
      fc.property(
        told,
        fc.nat(),
        fc.integer({ min: 0, max: 320 }),
        qualified,
        at,
        anyWard,
        (all, n, q, role, t, w) => {
          const signed = after(all, cosignature(q / 4, all[n % all.length]!.id!, role));
          const { version: _before, ...before } = view(all, t, w);
          const { version: _now, ...now } = view(signed, t, w);
          expect(canonical(now)).toBe(canonical(before));
        },
      ),
      runs(60),
    );
  });
});
