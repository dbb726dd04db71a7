/**
 * Design rule 1 the other way round: what one fact asks for by itself, written here a second time and
 * without the rules' own tables, is in the plan whatever else is known. Only facts that surely still
 * hold are asked about: nothing in the stream speaks of them or could have answered them.
 * Sources: design rules 1 and 2 and its table of defaults (common practice, no source, where it says so).
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isQualified } from '../../../kernel/author.ts';
import { patience, runs, whole } from '../../../kernel/runs.testkit.ts';
import { atLeast } from '../../handling/rules/help.ts';
import { task as taskValues, type AidClass, type People, type Task } from '../../handling/values.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import type { TaskPlan } from '../moving-view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { hours, recordOf, type Told } from './history.testkit.ts';
import { asRecorded, calm, histories } from './random-history.testkit.ts';
import { anyWard, type RandomWard } from './random-ward.testkit.ts';

/** What one fact asks of some tasks. */
interface Asks {
  readonly what: string;
  readonly tasks: readonly Task[];
  readonly hold?: true;
  readonly people?: People;
  /** None but these aids. */
  readonly onlyAids?: readonly AidClass[];
  /** None of these aids. */
  readonly noAids?: readonly AidClass[];
  readonly says?: RegExp;
}

const ALL = taskValues.options;
const RISES: readonly Task[] = ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk'];
const ON_FEET: readonly Task[] = ['stand', 'walk'];
const LIFTS: readonly AidClass[] = ['sling-lift', 'bariatric-lift'];
const UP_FROM_BED: readonly Task[] = ['bed-chair', 'toilet', 'stand', 'walk'];
const STAY_PUT = [
  'fall',
  'faint',
  'seizure',
  'low-glucose',
  'bleed',
  'transfusion',
  'new-symptom',
  'new-confusion',
  'sheath-out',
  'suspected-clot',
];

/** One entry among all of its stay, at an instant (hours after the start). */
interface Asked {
  readonly one: Told;
  readonly all: readonly Told[];
  readonly at: number;
  readonly w: RandomWard;
}
const timeOf = (x: Told): number => x.at ?? 0;
const payloadOf = (x: Told) => x.payload as Record<string, never> & Record<string, unknown>;
/** Nothing else of these types is in the stream, nor a correction that could have put one there. */
const noOther = ({ one, all }: Asked, ...types: string[]): boolean =>
  all.every((x) => x === one || !(types.includes(x.type) || types.includes(String(payloadOf(x).type))));
/** No check, confirm or session at or after it, nor a correction that could have moved one there. */
const noneSince = ({ one, all }: Asked, ...types: string[]): boolean =>
  all.every(
    (x) => !types.includes(String(payloadOf(x).type)) && (!types.includes(x.type) || timeOf(x) < timeOf(one)),
  );
const orderOf = (x: Told) => payloadOf(x).order as unknown as Record<string, unknown> | undefined;
const otherOrder = ({ one, all }: Asked, about: string): boolean =>
  all.some((x) => x !== one && (orderOf(x)?.about === about || payloadOf(x).type === 'order-changed'));

const HELD: Readonly<Record<string, readonly Task[]>> = {
  walking: ['walk'],
  standing: ON_FEET,
  'out-of-bed': RISES,
  'raising-the-back': RISES,
  'all-including-turning': ALL,
};
const BEYOND: Readonly<Record<string, readonly Task[]>> = {
  bed: RISES,
  'edge-of-bed': UP_FROM_BED,
  chair: ON_FEET,
  stand: ['walk'],
};

/** What the entry asks for by itself; nothing where that is not sure. */
function asked(of: Asked): Asks[] {
  const { one, w, at } = of;
  const p = payloadOf(one);
  switch (one.type) {
    case 'hold-placed':
      if (!noOther(of, 'hold-ended', 'hold-placed', 'hold-renewed')) return [];
      return [{ what: `hold ${String(p.scope)}`, tasks: HELD[String(p.scope)]!, hold: true }];
    case 'order-changed': {
      const order = orderOf(one)!;
      if (otherOrder(of, String(order.about))) return [];
      if (order.about === 'activity') {
        const tasks = BEYOND[String(order.most)];
        return tasks ? [{ what: `order ${String(order.most)}`, tasks, hold: true }] : [];
      }
      if (order.about === 'weight-bearing' && order.bears !== 'unrestricted') {
        return [{ what: 'a leg that may not bear', tasks: UP_FROM_BED, people: 'one' }];
      }
      if (order.about === 'precaution' && order.on) {
        const words = new RegExp(`${String(order.precaution)} precautions`, 'i');
        const spine = order.precaution === 'spine';
        return [
          { what: 'precaution', tasks: ALL, says: words },
          ...(spine ? [{ what: 'spine in line', tasks: ['in-bed' as const], people: 'two' as const }] : []),
        ];
      }
      return [];
    }
    case 'trigger-recorded': {
      const kind = String(p.kind);
      if (!noneSince(of, 'assessment-recorded', 'plan-confirmed') || kind === 'arrival') return [];
      const out: Asks[] = [{ what: `trigger ${kind}`, tasks: ALL, people: 'one' }];
      if (STAY_PUT.includes(kind)) out.push({ what: `trigger ${kind}`, tasks: RISES, hold: true });
      if (kind === 'block-on') out.push({ what: 'trigger block-on', tasks: ON_FEET, hold: true });
      if (kind === 'fall') {
        out.push({ what: 'fall: spine in doubt', tasks: ['lateral', 'from-floor'], hold: true });
        out.push({ what: 'fall: spine in doubt', tasks: ['in-bed'], people: 'three-or-more' });
      }
      if (kind === 'return-from-surgery' && noneSince(of, 'session-recorded')) {
        out.push({ what: 'first time up', tasks: RISES, people: 'two', says: /[Cc]hair behind/ });
      }
      return out;
    }
    case 'session-recorded': {
      if (!noneSince(of, 'assessment-recorded', 'plan-confirmed')) return [];
      const { outcome, events, readings } = p.session as unknown as {
        outcome: string;
        events: string[];
        readings?: { saturation: number }[];
      };
      if (events.includes('lowered-to-floor'))
        return [{ what: 'lowered to the floor', tasks: RISES, hold: true }];
      // Below every limit that a ward may set, and below every target that anybody orders here.
      const low = readings?.some((r) => r.saturation <= 80) ?? false;
      const wrong = outcome === 'stopped' || events.includes('dizzy') || low;
      return wrong ? [{ what: 'a session that went wrong', tasks: ALL, people: 'one' }] : [];
    }
    case 'attachment-added':
      // A chest drain asks for one more than stand by, and a person to itself for one more again.
      if (!noOther(of, 'attachment-removed')) return [];
      // Until somebody has looked, the change itself asks for one more.
      return [
        {
          what: 'chest drain with its own person',
          tasks: ALL,
          people: noneSince(of, 'assessment-recorded', 'plan-confirmed') ? 'three-or-more' : 'two',
        },
      ];
    case 'weight-recorded': {
      const { kg, how } = p.weight as unknown as { kg: number; how: string };
      const heavy = kg * (how === 'estimated' ? 1.2 : 1) >= 136;
      if (!heavy || !noOther(of, 'weight-recorded')) return [];
      return [{ what: 'heavy', tasks: ALL, noAids: ['sling-lift'] }];
    }
    case 'assessment-recorded': {
      const out: Asks[] = [];
      const says = p.cooperation as unknown as { waitsForHelp: string };
      if (says.waitsForHelp !== 'yes' && timeOf(one) > at - 24) {
        out.push({ what: 'does not always wait for help', tasks: UP_FROM_BED, people: 'one' });
      }
      const lost = (p.stages as unknown as { stage: string; outcome: string }[]).find(
        (s) => s.outcome === 'not-met',
      )?.stage;
      if (lost && noneSince({ ...of, one: { ...one, at: timeOf(one) + 0.01 } }, 'assessment-recorded')) {
        if (lost !== 'turn') out.push({ what: `${lost} not met`, tasks: ['walk'], hold: true });
        if (lost !== 'turn' && lost !== 'walk')
          out.push({ what: `${lost} not met`, tasks: ['stand'], hold: true });
      }
      return out;
    }
    case 'early-warning-recorded': {
      const on = rulesOf(w.ward).earlyWarning;
      const high = Number(p.score) >= on.totalFrom.value || (p.anyThree && on.anyThree.value);
      if (!on.on.value || !high || !noneSince(of, 'assessment-recorded', 'plan-confirmed')) return [];
      if (!noOther(of, 'early-warning-recorded')) return [];
      return [{ what: 'early-warning score', tasks: RISES, hold: true }];
    }
    case 'stay-begun':
      if (!noOther(of, 'assessment-recorded', 'seen-walking')) return [];
      return [
        { what: 'never checked here', tasks: ON_FEET, hold: true },
        { what: 'never checked here', tasks: ['bed-chair', 'toilet'], people: 'two', onlyAids: LIFTS },
      ];
    default:
      return [];
  }
}

/** Every entry that a change in the stream leads back to. */
function spokenOf(all: readonly Told[]): ReadonlySet<string> {
  const out = new Set<string>();
  for (const x of all) {
    let target = payloadOf(x).target as string | undefined;
    while (target !== undefined && !out.has(target)) {
      out.add(target);
      const found: Told | undefined = all.find((y) => y.id === target);
      target = found && (payloadOf(found).target as string | undefined);
    }
  }
  return out;
}

function missing(asks: Asks, p: TaskPlan): string[] {
  const out: string[] = [];
  if (asks.hold && !p.hold) out.push('no HOLD');
  if (asks.people && !atLeast(p.people, asks.people)) out.push(`only ${p.people}, not ${asks.people}`);
  if (asks.onlyAids && !asks.onlyAids.includes(p.aid)) out.push(`aid ${p.aid}`);
  if (asks.noAids?.includes(p.aid)) out.push(`aid ${p.aid}`);
  if (asks.says && !p.cautions.some((c) => asks.says!.test(c))) out.push(`nothing said of ${asks.what}`);
  return out.map((o) => `${asks.what}: ${p.task}: ${o}`);
}

describe('what a single fact in force asks for', { timeout: patience }, () => {
  const told = fc.oneof(histories, histories.map(asRecorded), calm, calm.map(asRecorded));
  const seen = new Map<string, number>();

  it('BOARD-11 is in the plan by day and by night, whatever else is known', () => {
    fc.assert(
      fc.property(told, fc.integer({ min: 0, max: 4 * 90 }), anyWard, (all, quarters, w) => {
        const at = quarters / 4 + 1 / 60;
        const { view } = evaluateStay(recordOf(all), w.ward, w.calendar, hours(at));
        if (!view.plan) return;
        const changed = spokenOf(all);
        const found: string[] = [];
        for (const one of all) {
          if (timeOf(one) > at || changed.has(one.id!)) continue;
          for (const asks of asked({ one, all, at, w })) {
            seen.set(asks.what, (seen.get(asks.what) ?? 0) + 1);
            for (const p of [...view.plan.day, ...view.plan.night]) {
              if (asks.tasks.includes(p.task)) found.push(...missing(asks, p));
            }
            // What ends trust is never current, and what asks or stops never says that all may start.
            const ends = one.type === 'trigger-recorded';
            if (ends && view.trust.state === 'current') found.push(`${asks.what}: trust current`);
            if ((ends || one.type === 'hold-placed') && view.mayStart?.word === 'may-start')
              found.push(`${asks.what}: may start`);
            if (ends && view.onOwn) found.push(`${asks.what}: on own`);
          }
        }
        expect(found).toEqual([]);
        const stoodBy = new Set(
          all
            .filter((x) => x.type === 'entry-confirmed')
            .map((x) => payloadOf(x).target as string | undefined),
        );
        // Said, stood by, or put right by somebody who may.
        const mayBeOnOwn = all.some(
          (x) =>
            (x.type === 'on-own-set' || payloadOf(x).type === 'on-own-set') &&
            (isQualified({ role: x.role ?? 'nurse' }) || stoodBy.has(x.id!)),
        );
        expect(view.onOwn === null || mayBeOnOwn).toBe(true);
      }),
      runs(300),
    );
    // The property is worth something only where each kind of fact was met.
    const kinds = [
      'spine',
      'lowered',
      'went wrong',
      'hold',
      'order',
      'trigger',
      'chest drain',
      'not met',
      'wait for help',
      'never checked',
    ];
    const missed = kinds.filter((kind) => ![...seen.keys()].some((what) => what.includes(kind)));
    expect(whole ? missed : []).toEqual([]);
  });
});
