/** Facts that stand beside the plan: infection steps, when the person is expected to leave, the line for the bedside. */
import * as commands from '@footboard/shared/capabilities/stays/commands';
import * as events from '@footboard/shared/capabilities/stays/events';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { isRefusal, readsStay, sayAt, stayAt, stayStream } from './standing.ts';

const setIsolation = decider({
  command: commands.setIsolation,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(events.isolationSet, stayStream(data.stay), { on: data.on }));
  },
});

const expectLeaving = decider({
  command: commands.expectLeaving,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    if (data.at !== null && toEpoch(data.at) <= context.occurred) {
      return refuse(
        'leaving-in-past',
        `leaving ${sayAt(context, toEpoch(data.at))} is not after ${sayAt(context, context.occurred)}, when this is said`,
        'Give a later time. If the person has left, end the stay.',
        '/at',
      );
    }
    return accept(newEvent(events.leavingExpected, stayStream(data.stay), { at: data.at }));
  },
});

const setTherapistLine = decider({
  command: commands.setTherapistLine,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const stream = stayStream(data.stay);
    return accept(
      newEvent(
        events.therapistLineSet,
        stream,
        data.line === null ? {} : { line: context.keep(`stay/${data.stay}`, data.line) },
      ),
    );
  },
});

export const besidePlanDeciders = [setIsolation, expectLeaving, setTherapistLine];
