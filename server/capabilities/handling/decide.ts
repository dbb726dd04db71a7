/** "On own" is never derived: a nurse or therapist sets it, and anyone takes it back. */
import { capabilityOf } from '@footboard/shared/capabilities/handling/rules/capability';
import * as commands from '@footboard/shared/capabilities/handling/commands';
import { onOwnRemoved, onOwnSet } from '@footboard/shared/capabilities/handling/events';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { judgedAt, tierAt, tierInput, viewAt } from '../stays/judged.ts';
import { isRefusal, readsStay, sayAt, stayAt, stayStream } from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';

const NO_ORDERS = { activity: null, weightBearing: new Map(), precautions: new Map(), brace: null };

/**
 * An order that stops walking, or a plan that says HOLD for standing or walking whatever stops it: nobody
 * goes to a chair, the toilet or the ward alone then.
 */
function stoppedOnFeet(view: StayView): Refusal | null {
  const feet = view.plan?.day.filter((p) => p.task === 'walk' || p.task === 'stand') ?? [];
  const order = feet.flatMap((p) => p.because).find((b) => b.rule === 'order/activity');
  if (order) {
    return refuse(
      'own-while-order',
      `an order stops it (${order.words})`,
      'Ask the prescriber for a new order, or leave "on own" for later.',
    );
  }
  const held = feet.find((p) => p.hold);
  if (!held) return null;
  return refuse(
    'own-while-plan-holds',
    `the plan of today says HOLD: ${held.task}`,
    'Read why in the plan and clear it first, or leave "on own" for later.',
  );
}

/** What stands against going alone at an instant. Source: design, "people". */
function againstOnOwn(context: DecideContext, standing: Standing, t: EpochMs): Refusal | null {
  const view = viewAt(context, standing, t);
  const tier = tierAt(context, standing, t);
  if (view.scope.kind !== 'staged' || !tier.clearedFree.has('walk')) {
    return refuse(
      'not-cleared-for-own',
      `walking has not been cleared free (${view.tier.word ?? 'no staged check applies'}${view.tier.secured ? ', secured' : ''})`,
      'Do the staged check up to the walk, with nothing holding the person; then set it.',
    );
  }
  const hold = view.holds[0];
  if (hold) {
    return refuse(
      'own-while-hold',
      `there is a hold on ${hold.scope.replaceAll('-', ' ')} since ${sayAt(context, hold.placedAt)}`,
      'Review the hold first: end it, or leave "on own" for later.',
    );
  }
  const stopped = stoppedOnFeet(view);
  if (stopped) return stopped;
  const trigger = view.trust.openTriggers[0];
  if (trigger) {
    return refuse(
      'own-while-open-trigger',
      `${trigger.words} (${sayAt(context, trigger.at)}) has not been looked at`,
      'Check the person again, answering it; then set "on own".',
    );
  }
  if (view.trust.state !== 'current') {
    return refuse(
      'own-while-recheck',
      'the plan is not current',
      'Confirm the plan on an ordinary move, or check again; then set "on own".',
    );
  }
  if (tier.pressureDrop) {
    return refuse(
      'pressure-drop',
      `standing pressure fell ${sayAt(context, tier.pressureDrop.at)}`,
      'Do a full check with a pressure set; somebody stays beside the person until it is well.',
    );
  }
  const { waitsForHelp } = capabilityOf({
    ...tierInput(context, standing, t),
    tier,
    orders: NO_ORDERS,
    weight: null,
  });
  if (waitsForHelp !== 'yes') {
    return refuse(
      'may-not-wait-for-help',
      waitsForHelp === 'not known'
        ? 'nobody has recorded whether the person waits and asks for help'
        : `"waits and asks for help" is recorded as ${waitsForHelp}`,
      'Record it with the next check; somebody stays within reach until it is a clear yes.',
    );
  }
  return null;
}

const setOnOwn = decider({
  command: commands.setOnOwn,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    for (const t of judgedAt(context, standing)) {
      const against = againstOnOwn(context, standing, t);
      if (against) return against;
    }
    const { stay, where, when } = data;
    return accept(
      newEvent(onOwnSet, stayStream(stay), { where: [...new Set(where)], when: [...new Set(when)] }),
    );
  },
});

/** Taken even where nothing is set: the person who enters it saw a reason, and an entry in transit may set it. */
const removeOnOwn = decider({
  command: commands.removeOnOwn,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(onOwnRemoved, stayStream(data.stay), {}));
  },
});

export const deciders = underPolicy([setOnOwn, removeOnOwn]);
