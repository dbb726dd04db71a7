import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { eventId, stayId } from '../../kernel/ids.ts';
import {
  cooperation,
  criticalCareSigns,
  depth,
  earlyWarning,
  reading,
  risingSymptom,
  stageRecord,
  walkingSupport,
  worn,
} from './values.ts';

export const recordAssessment = commandType(
  'record-assessment',
  'Record a staged check, whole or partial, stage by stage in the order of the protocol.',
  z.strictObject({
    stay: stayId,
    protocol: z.strictObject({ id: z.string().min(1).max(40), version: z.number().int().min(1) }),
    depth: depth.exclude(['confirm']),
    stages: z.array(stageRecord).min(1, 'record at least one stage').max(20),
    readings: z.array(reading).max(60).default([]),
    risingSymptoms: z.array(risingSymptom).max(5).optional(),
    cooperation: cooperation.optional(),
    wears: z.array(worn).max(5).default([]),
    walkingSupport: walkingSupport.optional(),
    answers: z.array(eventId).max(20).default([]),
    firstTimeUp: z.boolean().default(false),
    note: freeText.optional(),
  }),
);
export const confirmPlan = commandType(
  'confirm-plan',
  'A nurse watched one ordinary move: as planned, nothing different.',
  z.strictObject({
    stay: stayId,
    task: z.enum(['in-bed', 'edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']),
  }),
);
export const recordSeenWalking = commandType(
  'record-seen-walking',
  'A nurse saw the person walk steadily on arrival with the usual aid.',
  z.strictObject({ stay: stayId, walkingSupport }),
);
export const recordEarlyWarning = commandType(
  'record-early-warning',
  'Record an early-warning score (NEWS2) with the time it was charted.',
  z.strictObject({ stay: stayId, ...earlyWarning.shape }),
);
export const recordCriticalCareSigns = commandType(
  'record-critical-care-signs',
  'Record signs for the critical-care limits, on a ward that turned them on.',
  z.strictObject({ stay: stayId, ...criticalCareSigns.shape }),
);
export const recordAsleep = commandType(
  'record-asleep',
  'Seen asleep: a check that falls due meanwhile comes before the next move.',
  z.strictObject({ stay: stayId }),
);
export const assessmentCommands = [
  recordAssessment,
  confirmPlan,
  recordSeenWalking,
  recordEarlyWarning,
  recordCriticalCareSigns,
  recordAsleep,
] as const;
