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

/** What goals are proposed along, from the least up. Stairs are a finding, never proposed. Ours, practice. */
export const LADDER: readonly Activity[] = ['back-raised', 'edge-sit', 'stand', 'chair', 'walk'];

/** What an activity shows of what a person can do; the same number for what takes the same. */
const SHOWS: Readonly<Record<Activity, number>> = {
  'bed-exercise': 0,
  'back-raised': 1,
  'lifted-to-chair': 2,
  'edge-sit': 3,
  stand: 4,
  toilet: 5,
  chair: 5,
  march: 6,
  walk: 7,
  stairs: 8,
};
/** What was done in a lift shows no more than being lifted, whatever it was for. */
const byLift = ({ help }: Session): boolean => help?.aid === 'sling-lift' || help?.aid === 'bariatric-lift';
const shown = (session: Session, activity: Activity): number =>
  byLift(session) ? Math.min(SHOWS[activity], SHOWS['lifted-to-chair']) : SHOWS[activity];

/** Whether a session got as far as this activity. One that was not done got nowhere. */
export const reaches = (session: Session, activity: Activity): boolean =>
  session.outcome !== 'not-done' && session.activities.some((a) => shown(session, a) >= SHOWS[activity]);
/** The activity of a session that shows most; null for one that was not done. */
export const showsMost = (session: Session): Activity | null =>
  session.outcome === 'not-done'
    ? null
    : session.activities.reduce<Activity | null>((most, a) => {
        const at = shown(session, a) < SHOWS[a] ? 'lifted-to-chair' : a;
        return most === null || SHOWS[at] > SHOWS[most] ? at : most;
      }, null);
export const showsAsMuch = (activity: Activity, as: Activity): boolean => SHOWS[activity] >= SHOWS[as];
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
