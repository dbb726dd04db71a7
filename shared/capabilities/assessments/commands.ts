import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { eventId, stayId } from '../../kernel/ids.ts';
import { cooperation, depth, reading, risingSymptom, stageRecord, walkingSupport, worn } from './values.ts';

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
export const assessmentCommands = [recordAssessment, confirmPlan, recordSeenWalking] as const;
