import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { eventId, textRef } from '../../kernel/ids.ts';
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

export const assessmentRecorded = eventType('assessment-recorded', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    protocol: z.strictObject({ id: z.string().min(1).max(40), version: z.number().int().min(1) }),
    depth: depth.exclude(['confirm']),
    stages: z.array(stageRecord).min(1).max(20),
    readings: z.array(reading).max(60),
    /** Asked for at rising when a pressure set was done; empty means asked and none. */
    risingSymptoms: z.array(risingSymptom).max(5).optional(),
    cooperation: cooperation.optional(),
    wears: z.array(worn).max(5),
    walkingSupport: walkingSupport.optional(),
    /** Triggers (by the event that recorded them) that this assessment was done to answer. */
    answers: z.array(eventId).max(20),
    firstTimeUp: z.boolean().default(false),
    note: textRef.optional(),
  }),
  words: (p, n) => {
    const last = p.stages.filter((s) => s.outcome === 'met').at(-1);
    const failed = p.stages.find((s) => s.outcome === 'not-met');
    return (
      `Staged check (${p.depth.replaceAll('-', ' ')}): ` +
      (last
        ? `cleared up to ${last.stage}${last.how === 'secured' ? ' (secured)' : ''}`
        : 'no stage cleared') +
      (failed ? `; ${failed.stage} not met` : '') +
      (p.note ? `. ${n.text(p.note)}` : '')
    );
  },
});

/** One ordinary move watched by a nurse: as planned, nothing different. Renews; tests nothing new. */
export const planConfirmed = eventType('plan-confirmed', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({
    task: z.enum(['in-bed', 'edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk']),
    /** The assessment whose plan was watched. */
    assessment: eventId,
  }),
  words: (p) =>
    `Plan confirmed on an ordinary move (${p.task.replaceAll('-', ' ')}): as planned, nothing different`,
});

/** Seen walking steadily on arrival with the usual aid, by a nurse: stand by, for 4 hours. */
export const seenWalking = eventType('seen-walking', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ walkingSupport }),
  words: (p) =>
    `Seen walking steadily on arrival${p.walkingSupport === 'none' ? '' : ` with ${p.walkingSupport.replaceAll('-', ' ')}`}`,
});

/** An early-warning score, charted elsewhere or worked out from its parts. */
export const earlyWarningRecorded = eventType('early-warning-recorded', {
  stream: 'stay',
  version: 1,
  schema: earlyWarning,
  words: (p) =>
    `Early-warning score (NEWS2) ${p.score}${p.anyThree ? ', one parameter at 3' : ''}, oxygen scale ${p.scale}`,
});

/** Signs for the critical-care limits, where the ward turned them on. */
export const criticalCareSignsRecorded = eventType('critical-care-signs-recorded', {
  stream: 'stay',
  version: 1,
  schema: criticalCareSigns,
  words: (p) => {
    const said = Object.entries(p)
      .filter(([key, value]) => key !== 'bars' && value !== undefined)
      .map(([key, value]) => `${key.replace(/([A-Z])/g, (c) => ` ${c.toLowerCase()}`)} ${String(value)}`);
    return `Critical-care signs: ${[...said, ...p.bars.map((b) => b.replaceAll('-', ' '))].join(', ') || 'none given'}`;
  },
});

/** Seen asleep: a check that falls due meanwhile comes before the next move instead. */
export const asleepSeen = eventType('asleep-seen', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({}),
  words: () => 'Seen asleep',
});

export const assessmentEvents = [
  assessmentRecorded,
  planConfirmed,
  seenWalking,
  earlyWarningRecorded,
  criticalCareSignsRecorded,
  asleepSeen,
] as const;
