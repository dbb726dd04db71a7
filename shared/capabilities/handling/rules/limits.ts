/** What holds, orders, precautions and open triggers forbid or add, task by task. They only raise. */
import type { HoldScope } from '../../orders/values.ts';
import type { AidClass, Task } from '../values.ts';
import { supportForbidden } from './arms.ts';
import { task as taskValues } from '../values.ts';
import type { Demand } from './demand.ts';
import { caution, demand, note, onePersonMore, stop } from './demand.ts';
import { TRIGGER_WORDS } from '../../orders/rules/triggers.ts';
import { TRIGGER_HELP } from './trigger-help.ts';
import type { PlanInput } from './types.ts';

const UP: ReadonlySet<Task> = new Set(['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']);
/** Whoever must stay in bed is not to be in a chair either: moving up in it is for someone to ask about. */
const OUT_OF_BED: ReadonlySet<Task> = new Set([...UP, 'in-chair']);
const ON_FEET: ReadonlySet<Task> = new Set(['stand', 'walk']);
const TRANSFERS: ReadonlySet<Task> = new Set(['bed-chair', 'toilet']);
const OVER_FEET: ReadonlySet<Task> = new Set([...TRANSFERS, 'stand']);

const HELD_BY_SCOPE: Readonly<Record<HoldScope, ReadonlySet<Task>>> = {
  walking: new Set(['walk']),
  standing: ON_FEET,
  'out-of-bed': OUT_OF_BED,
  'raising-the-back': OUT_OF_BED,
  'all-including-turning': new Set(taskValues.options),
};
const plain = (code: string) => code.replaceAll('-', ' ');
/** What a stopped task leaves open, where something does. */
const BESIDE_STOP: Readonly<Partial<Record<Task, readonly string[]>>> = {
  toilet: ['Toilet in bed goes on'],
  'in-chair': ['Should not be in a chair: ask how to go back to bed'],
};
const besideStop = (task: Task) => ({ cautions: BESIDE_STOP[task] ?? [] });

export function holdDemands(task: Task, input: PlanInput): Demand[] {
  const out: Demand[] = [];
  for (const h of input.holds) {
    const words = `Hold on ${plain(h.scope)} (${plain(h.reason)})${h.reviewDue ? ', HOLD REVIEW DUE' : ''}`;
    if (HELD_BY_SCOPE[h.scope].has(task)) {
      const beside = h.scope === 'all-including-turning' ? {} : besideStop(task);
      out.push(stop('hold', words, [h.event], beside));
    } else if (h.scope === 'standing' && TRANSFERS.has(task)) {
      out.push(demand('hold', `${words}: only lifted, not over the feet`, [h.event], 'two', 'sling-lift'));
    } else if (h.scope === 'raising-the-back' && (task === 'in-bed' || task === 'lateral')) {
      out.push(caution('hold', `${words}: keep the back flat`, [h.event]));
    }
  }
  return out;
}

const BEYOND_ACTIVITY = {
  bed: OUT_OF_BED,
  'edge-of-bed': new Set<Task>(['bed-chair', 'toilet', 'stand', 'walk', 'in-chair']),
  chair: ON_FEET,
  stand: new Set<Task>(['walk']),
  walk: new Set<Task>(),
  'no-limit': new Set<Task>(),
} as const;

const SPINE_IN_LINE = {
  'in-bed': 'Spine precautions: turn in one line, two people',
  lateral: 'Spine precautions: move across in one line, two people',
} as const;

export function orderDemands(task: Task, input: PlanInput): Demand[] {
  const { activity, precautions, brace } = input.orders;
  const out: Demand[] = [];
  if (activity && BEYOND_ACTIVITY[activity.value].has(task)) {
    out.push(
      stop(
        'order/activity',
        `Order: activity up to ${plain(activity.value)}`,
        [activity.fact],
        besideStop(task),
      ),
    );
  }
  for (const [which, order] of precautions) {
    out.push(caution('order/precaution', `${plain(which)} precautions as ordered`, [order.fact]));
    if (which === 'spine' && (task === 'in-bed' || task === 'lateral')) {
      out.push(demand('order/precaution', SPINE_IN_LINE[task], [order.fact], 'two'));
    }
  }
  if (brace && task !== 'in-bed' && task !== 'lateral') {
    const words = task === 'in-chair' ? 'Brace stays on' : 'Brace on before getting up';
    out.push(caution('order/brace', words, [brace.fact]));
  }
  const forbidden = supportForbidden(input);
  if (forbidden && task === 'walk') out.push(stop('order/arm', forbidden.words, forbidden.facts));
  // Without the support they walk with, nobody only stands by: not where a held walk cannot wait either.
  if (forbidden && (task === 'walk' || OVER_FEET.has(task))) {
    out.push(demand('order/arm', forbidden.words, forbidden.facts, 'one'));
  }
  for (const [limb, order] of input.orders.weightBearing) {
    if (order.value.bears === 'unrestricted') continue;
    const limit = order.value.limit;
    const number = !limit ? '' : 'percent' in limit ? `, ${limit.percent} %` : `, ${limit.kg} kg`;
    out.push(
      caution('order/weight-bearing', `${plain(limb)}: weight bearing ${order.value.bears}${number}`, [
        order.fact,
      ]),
    );
  }
  return out;
}

/**
 * A lift beside hip or spine precautions: a sling bends the hip and rounds the back, and the order
 * does not say whether it may. Common practice, no source.
 */
export function slingDemands(input: PlanInput, aids: readonly AidClass[]): Demand[] {
  if (!aids.includes('sling-lift') && !aids.includes('bariatric-lift')) return [];
  return (['hip', 'spine'] as const).flatMap((which) => {
    const order = input.orders.precautions.get(which);
    const words = `${which === 'hip' ? 'Hip' : 'Spine'} precautions: ask which sling before lifting`;
    return order ? [caution('order/precaution', words, [order.fact])] : [];
  });
}

export function scopeDemands(task: Task, input: PlanInput): Demand[] {
  const out: Demand[] = [];
  if (input.fence) {
    out.push(stop('scope/clinicians-plan', `Clinician's plan only (${plain(input.fence)})`, []));
  }
  const doubt = input.spineOrPelvisInDoubt;
  if (doubt) {
    out.push(
      task === 'in-bed'
        ? demand(
            'spine-or-pelvis-in-doubt',
            'Spine or pelvis in doubt: turn in one line, three people',
            [doubt.fact],
            'three-or-more',
          )
        : stop(
            'spine-or-pelvis-in-doubt',
            'Spine or pelvis in doubt: do not move, ask; no lift replaces that',
            [doubt.fact],
          ),
    );
  }
  return out;
}

/** Tasks in which the person rises. */
export const rises = (task: Task): boolean => UP.has(task);

export function triggerDemands(task: Task, input: PlanInput): Demand[] {
  const out: Demand[] = [];
  let more = 0;
  for (const trigger of input.trust.openTriggers) {
    const row = TRIGGER_HELP[trigger.kind];
    if (row.holds.includes(task)) {
      out.push(
        stop(
          `trigger/${trigger.kind}`,
          row.says,
          [trigger.event],
          // Whoever is in a chair when it happens stays there until someone has looked.
          task === 'toilet' ? besideStop(task) : {},
        ),
      );
    } else if (row.holds.includes('stand') && TRANSFERS.has(task)) {
      const words = `${TRIGGER_WORDS[trigger.kind]}: only lifted, not over the feet`;
      out.push(demand(`trigger/${trigger.kind}`, words, [trigger.event], 'two', 'sling-lift'));
    }
    // Several triggers ask for the most that any of them asks for, not for their sum.
    if (row.more > more) {
      out.push(onePersonMore(`trigger/${trigger.kind}`, row.says, [trigger.event], row.more - more));
      more = row.more;
    } else if (row.more > 0) out.push(note(`trigger/${trigger.kind}`, row.says, [trigger.event]));
  }
  return out;
}

export function surgeryDemands(task: Task, input: PlanInput): Demand[] {
  const pending = input.firstTimeUpPending;
  if (!pending || !rises(task)) return [];
  return [
    demand(
      'first-time-up',
      pending.value === true
        ? 'First time up since surgery or bed rest: pressure set, two people whatever the tier'
        : 'Up free at the first time since surgery or bed rest: two people until it is repeated',
      [pending.fact],
      'two',
      'none',
      { cautions: ['Chair behind, shoes on, bed low, brakes on'] },
    ),
  ];
}

/**
 * What speaks against getting up from the floor without another's strength: any hold, and what stops
 * standing or asks for hands at it.
 */
export const againstRisingAlone = (input: PlanInput): Demand[] => [
  ...[
    ...holdDemands('walk', input),
    ...orderDemands('stand', input),
    ...triggerDemands('stand', input),
    ...scopeDemands('stand', input),
  ].filter((d) => d.help.hold),
  ...surgeryDemands('stand', input),
];
