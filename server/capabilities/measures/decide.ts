/** Walking measures: off until a therapist turns them on for a stay, and never a reason for an unsafe walk. */
import * as commands from '@footboard/shared/capabilities/measures/commands';
import { walkingMeasured, walkingMeasuresSwitched } from '@footboard/shared/capabilities/measures/events';
import { measureNeeds, stopsMeasure } from '@footboard/shared/capabilities/measures/rules/needs';
import type { Measure } from '@footboard/shared/capabilities/measures/values';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { judgedAt, tierAt, viewAt } from '../stays/judged.ts';
import { isRefusal, readsStay, stayAt, stayStream } from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';

const switchWalkingMeasures = decider({
  command: commands.switchWalkingMeasures,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(walkingMeasuresSwitched, stayStream(data.stay), { on: data.on }));
  },
});

/** On when it was taken, or turned on since: the therapist who takes it may turn them on after. */
const areOn = (context: DecideContext, standing: Standing): boolean =>
  judgedAt(context, standing).some((t) => viewAt(context, standing, t).measures !== null);

/** Judged at the time it was taken: it must not have been the reason for an unsafe walk or rise. */
function stopped(context: DecideContext, standing: Standing, kind: Measure['kind']): Refusal | null {
  const { cleared } = tierAt(context, standing, context.occurred);
  const why = stopsMeasure(kind, cleared, viewAt(context, standing, context.occurred));
  if (why === null) return null;
  return refuse(
    measureNeeds(kind) === 'walk' ? 'walk-not-cleared' : 'stand-not-cleared',
    why,
    'Do not take this measure now. Check the person first. What was done all the same is recorded as a session.',
    '/measure/kind',
  );
}

const recordWalkingMeasure = decider({
  command: commands.recordWalkingMeasure,
  reads: readsStay,
  decide: ({ stay, ...data }, context) => {
    const standing = stayAt(context, stay);
    if (isRefusal(standing)) return standing;
    if (!areOn(context, standing)) {
      return refuse(
        'walking-measures-off',
        'no therapist has turned walking measures on for this stay',
        'Ask a therapist to turn them on; a walk itself is recorded as a session.',
      );
    }
    return (
      stopped(context, standing, data.measure.kind) ??
      accept(newEvent(walkingMeasured, stayStream(stay), data))
    );
  },
});

export const deciders = underPolicy([switchWalkingMeasures, recordWalkingMeasure]);
