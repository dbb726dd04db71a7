/** Walking measures: off until a therapist turns them on for a stay. */
import * as commands from '@footboard/shared/capabilities/measures/commands';
import { walkingMeasured, walkingMeasuresSwitched } from '@footboard/shared/capabilities/measures/events';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { viewAt } from '../stays/judged.ts';
import { isRefusal, readsStay, stayAt, stayStream } from '../stays/standing.ts';

const switchWalkingMeasures = decider({
  command: commands.switchWalkingMeasures,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(walkingMeasuresSwitched, stayStream(data.stay), { on: data.on }));
  },
});

const recordWalkingMeasure = decider({
  command: commands.recordWalkingMeasure,
  reads: readsStay,
  decide: ({ stay, ...data }, context) => {
    const standing = stayAt(context, stay);
    if (isRefusal(standing)) return standing;
    if (viewAt(context, standing, context.occurred).measures === null) {
      return refuse(
        'walking-measures-off',
        'no therapist has turned walking measures on for this stay',
        'Ask a therapist to turn them on; a walk itself is recorded as a session.',
      );
    }
    return accept(newEvent(walkingMeasured, stayStream(stay), data));
  },
});

export const deciders = underPolicy([switchWalkingMeasures, recordWalkingMeasure]);
