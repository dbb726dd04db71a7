import type { StageMeaning } from '../../assessments/rules/protocol.ts';
import type { Activity } from '../values.ts';

/**
 * The stage that must be cleared before a goal may ask for an activity; null where nothing need be
 * (in bed, or lifted, as a qualified person chooses). Source: design, goals; ours, practice.
 */
export const NEEDED_FOR: Readonly<Record<Activity, StageMeaning | null>> = {
  'bed-exercise': null,
  'back-raised': null,
  'lifted-to-chair': null,
  'edge-sit': 'edge',
  stand: 'stand',
  march: 'turn',
  chair: 'turn',
  toilet: 'turn',
  walk: 'walk',
  stairs: 'walk',
};
