/** Facts of the stay itself: away and back, usual way, weight, what is attached, which plan applies. */
import * as commands from '@footboard/shared/capabilities/stays/commands';
import * as events from '@footboard/shared/capabilities/stays/events';
import { triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import type { Fact } from '@footboard/shared/capabilities/corrections/facts';
import { isQualified } from '@footboard/shared/kernel/author';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import { toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { besidePlanDeciders } from './beside-plan.ts';
import { estimateNeedsQualified, placementDeciders } from './placement.ts';
import { factsBy, isRefusal, readsStay, sayAt, stayAt, stayStream } from './standing.ts';

/** The fact that took the person off the ward, while they are away. */
function awayBy(facts: readonly Fact[]): Fact<PayloadOf<typeof events.wentOffWard>> | null {
  const last = facts.findLast((f) => f.type === 'went-off-ward' || f.type === 'came-back');
  return last?.type === 'went-off-ward' ? (last as Fact<PayloadOf<typeof events.wentOffWard>>) : null;
}

const goOffWard = decider({
  command: commands.goOffWard,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const away = awayBy(factsBy(standing.record, context.occurred));
    if (away) {
      return refuse(
        'already-off-ward',
        `the person has been off the ward since ${sayAt(context, away.occurred)}`,
        'Enter the return first, or correct the earlier entry.',
        '/stay',
      );
    }
    if (data.dueBack !== undefined && toEpoch(data.dueBack) <= context.occurred) {
      return refuse(
        'due-back-in-past',
        `due back ${sayAt(context, toEpoch(data.dueBack))} is not after leaving ${sayAt(context, context.occurred)}`,
        'Give a later time, or leave it out.',
        '/dueBack',
      );
    }
    return accept(
      newEvent(events.wentOffWard, stayStream(data.stay), {
        reason: data.reason,
        ...(data.dueBack === undefined ? {} : { dueBack: data.dueBack }),
      }),
    );
  },
});

/**
 * What a return asks for. Behind a test, or a reason that is not named, may stand a procedure or a
 * sedative: somebody looks before the next move. Source: users' research 3a, return from a procedure;
 * that a visit home asks for nothing is common practice, no source.
 */
const RETURN_TRIGGER = {
  theatre: 'return-from-surgery',
  dialysis: 'return-from-dialysis',
  test: 'asked-to-look-again',
  other: 'asked-to-look-again',
  'home-visit': null,
} as const;

const comeBack = decider({
  command: commands.comeBack,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const away = awayBy(factsBy(standing.record, context.occurred));
    if (!away) {
      return refuse(
        'not-off-ward',
        'the board has the person on the ward',
        'Nothing to enter. If they came back from theatre or dialysis, record that as a trigger.',
        '/stay',
      );
    }
    const kind = RETURN_TRIGGER[away.data.reason];
    const stream = stayStream(data.stay);
    return accept(
      newEvent(events.cameBack, stream, {}),
      ...(kind ? [newEvent(triggerRecorded, stream, { kind })] : []),
    );
  },
});

const recordUsualWay = decider({
  command: commands.recordUsualWay,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const wish = data.wish && context.keep(`stay/${data.stay}`, data.wish);
    return accept(
      newEvent(events.usualWayRecorded, stayStream(data.stay), {
        usual: data.usual,
        ...(wish ? { wish } : {}),
      }),
    );
  },
});

const recordWeight = decider({
  command: commands.recordWeight,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    if (data.weight.how === 'estimated' && !isQualified(context.author)) {
      return estimateNeedsQualified('/weight/how');
    }
    return accept(newEvent(events.weightRecorded, stayStream(data.stay), { weight: data.weight }));
  },
});

type Added = Fact<PayloadOf<typeof events.attachmentAdded>>;

/** Attachments on the person, by id, in the order they were added. */
function attachedBy(facts: readonly Fact[]): ReadonlyMap<string, Added> {
  const attached = new Map<string, Added>();
  for (const fact of facts) {
    if (fact.type === 'attachment-added') attached.set((fact as Added).data.attachment, fact as Added);
    if (fact.type === 'attachment-removed')
      attached.delete((fact as Fact<PayloadOf<typeof events.attachmentRemoved>>).data.attachment);
  }
  return attached;
}

const addAttachment = decider({
  command: commands.addAttachment,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const known = standing.record.events.some(
      (e) =>
        e.type === 'attachment-added' &&
        (e.payload as PayloadOf<typeof events.attachmentAdded>).attachment === data.attachment,
    );
    if (known) {
      return refuse(
        'attachment-known',
        'this attachment is already recorded for this stay',
        'Give a new attachment a new id; correct the entry if it was wrong.',
        '/attachment',
      );
    }
    const { stay, ...attachment } = data;
    return accept(newEvent(events.attachmentAdded, stayStream(stay), attachment));
  },
});

const removeAttachment = decider({
  command: commands.removeAttachment,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const added = attachedBy(factsBy(standing.record, context.occurred)).get(data.attachment);
    if (!added) {
      return refuse(
        'attachment-unknown',
        'the person had no such attachment at that time',
        'Choose one of the attachments shown on the stay page; check the time.',
        '/attachment',
      );
    }
    return accept(
      newEvent(events.attachmentRemoved, stayStream(data.stay), {
        attachment: data.attachment,
        kind: added.data.kind,
      }),
    );
  },
});

const setScope = decider({
  command: commands.setScope,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const stream = stayStream(data.stay);
    const keep = (text: string) => context.keep(`stay/${data.stay}`, text);
    switch (data.scope) {
      case 'staged':
        return accept(newEvent(events.scopeSet, stream, { scope: 'staged' }));
      case 'clinicians-plan':
        return accept(
          newEvent(events.scopeSet, stream, {
            scope: 'clinicians-plan',
            fence: data.fence,
            plan: keep(data.plan),
          }),
        );
      case 'comfort':
        return accept(
          newEvent(events.scopeSet, stream, {
            scope: 'comfort',
            ...(data.plan === undefined ? {} : { plan: keep(data.plan) }),
          }),
        );
    }
  },
});

const setWallShowing = decider({
  command: commands.setWallShowing,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(events.wallShowingSet, stayStream(data.stay), { showing: data.showing }));
  },
});

export const deciders = underPolicy([
  ...placementDeciders,
  goOffWard,
  comeBack,
  recordUsualWay,
  recordWeight,
  addAttachment,
  removeAttachment,
  setScope,
  setWallShowing,
  ...besidePlanDeciders,
]);
