/** Anna in bed b1, with an entry of each kind that a correction, an addendum or a retraction may name. */
import { triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Session } from '@footboard/shared/capabilities/sessions/values';
import { AIDE, arrived, checked, fact, hours, iso, STAFF } from '../given.testkit.ts';

export const RECORDS = STAFF.records;
export const anna = arrived('anna', 'b1', { id: 'arrival' });
export const walk: Session = {
  outcome: 'done',
  occasion: 'planned',
  activities: ['walk'],
  startedAt: iso(1),
  metres: 30,
  events: [],
  firstTimeUp: false,
};
export const session = fact(
  sessionRecorded,
  'anna',
  { session: walk },
  { at: hours(1), id: 'session', by: AIDE },
);
export const fall = fact(triggerRecorded, 'anna', { kind: 'fall' }, { at: hours(1), id: 'fall', by: AIDE });
export const walked = checked('anna', 'walk', { at: hours(1), id: 'check' });

export const of = (
  target: string,
  reason: 'wrong-value' | 'wrong-person' | 'said-more-later' = 'wrong-value',
) => ({ stay: 'anna', target, reason }) as const;
