import type { HoldScope, Order } from '../../orders/values.ts';
import type { Activity, Session } from '../values.ts';
import { NEEDED_FOR } from './needed-for.ts';

/** Being up: the edge of the bed and everything beyond it, a lifted chair too. Common practice, no source. */
const NOT_UP: ReadonlySet<Activity> = new Set<Activity>(['bed-exercise', 'back-raised']);
export const isUp = (activity: Activity): boolean => !NOT_UP.has(activity);

/** From the least to the most demanding. */
const DEMAND: readonly Activity[] = [
  'bed-exercise',
  'back-raised',
  'lifted-to-chair',
  'edge-sit',
  'stand',
  'toilet',
  'chair',
  'march',
  'walk',
  'stairs',
];
export const demandOf = (activity: Activity): number => DEMAND.indexOf(activity);
export const mostDemanding = (session: Session): Activity | null =>
  session.activities.reduce<Activity | null>(
    (most, a) => (most === null || demandOf(a) > demandOf(most) ? a : most),
    null,
  );

export const wasUp = (session: Session): boolean =>
  session.outcome !== 'not-done' && session.activities.some(isUp);

/** What may be asked of a person: never an activity whose stage is not cleared. Source: design, goals. */
export const isCleared = (activity: Activity, cleared: ReadonlySet<string>): boolean => {
  const stage = NEEDED_FOR[activity];
  return stage === null || cleared.has(stage);
};

const UPRIGHT_ON_FEET: readonly Activity[] = ['stand', 'toilet', 'chair', 'march', 'walk', 'stairs'];
const STEPPING: readonly Activity[] = ['march', 'walk', 'stairs'];

/** What a hold of this scope stops. */
export function isHeld(activity: Activity, scope: HoldScope): boolean {
  switch (scope) {
    case 'walking':
      return STEPPING.includes(activity);
    case 'standing':
      return UPRIGHT_ON_FEET.includes(activity);
    case 'out-of-bed':
      return isUp(activity);
    case 'raising-the-back':
      return activity !== 'bed-exercise';
    case 'all-including-turning':
      return true;
  }
}

/** What a prescriber's limit on activity leaves. */
export function isOrdered(activity: Activity, most: Extract<Order, { about: 'activity' }>['most']): boolean {
  switch (most) {
    case 'bed':
      return !isUp(activity);
    case 'edge-of-bed':
      return !isUp(activity) || activity === 'edge-sit';
    case 'chair':
      return !STEPPING.includes(activity) && activity !== 'stand';
    case 'stand':
      return !STEPPING.includes(activity) || activity === 'march';
    case 'walk':
      return activity !== 'stairs';
    case 'no-limit':
      return true;
  }
}
