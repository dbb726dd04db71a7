/** Signs beside a staged check: the early-warning score, the critical-care signs, and "asleep". */
import * as commands from '@footboard/shared/capabilities/assessments/commands';
import * as events from '@footboard/shared/capabilities/assessments/events';
import { impossibleScore } from '@footboard/shared/capabilities/assessments/rules/early-warning';
import type { EarlyWarning } from '@footboard/shared/capabilities/assessments/values';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { isRefusal, readsStay, stayAt, stayStream } from '../stays/standing.ts';

/** A score that its chart cannot give. `at` is the JSON pointer of the entry. */
export function scoreFaults(score: EarlyWarning, at: string): Refusal | null {
  const why = impossibleScore(score);
  return why === null
    ? null
    : refuse(
        'early-warning-impossible',
        why,
        'Check the number and whether one parameter scored 3 on the chart, or work it out from its parts.',
        `${at}/score`,
      );
}

const recordEarlyWarning = decider({
  command: commands.recordEarlyWarning,
  reads: readsStay,
  decide: ({ stay, ...score }, context) => {
    const standing = stayAt(context, stay);
    if (isRefusal(standing)) return standing;
    return scoreFaults(score, '') ?? accept(newEvent(events.earlyWarningRecorded, stayStream(stay), score));
  },
});

const recordCriticalCareSigns = decider({
  command: commands.recordCriticalCareSigns,
  reads: readsStay,
  decide: ({ stay, ...signs }, context) => {
    const standing = stayAt(context, stay);
    if (isRefusal(standing)) return standing;
    if (!rulesOf(context.ward!).criticalCare.on.value) {
      return refuse(
        'critical-care-set-off',
        'this ward has not turned the critical-care limits on',
        "Publish ward rules with criticalCare.on set, signed by the ward's clinician; or record the readings with a check.",
      );
    }
    return accept(newEvent(events.criticalCareSignsRecorded, stayStream(stay), signs));
  },
});

const recordAsleep = decider({
  command: commands.recordAsleep,
  reads: readsStay,
  decide: ({ stay }, context) => {
    const standing = stayAt(context, stay);
    if (isRefusal(standing)) return standing;
    return accept(newEvent(events.asleepSeen, stayStream(stay), {}));
  },
});

export const signDeciders = [recordEarlyWarning, recordCriticalCareSigns, recordAsleep] as const;
