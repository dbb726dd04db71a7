/**
 * What each trigger does to the plan until someone has looked: the row by which it raises help.
 * Common practice, no source, to be signed by the ward. A trigger always ends trust; the tables
 * below never lower anything.
 */
import type { TriggerKind } from '../../orders/values.ts';
import type { Task } from '../values.ts';

export interface TriggerRow {
  /** Tasks not done until a nurse has looked. */
  readonly holds: readonly Task[];
  /** People more, on every task. */
  readonly more: number;
  readonly says: string;
}

/** Whoever is in a chair when it happens is not moved up in it either: a nurse looks first. */
const UP: readonly Task[] = ['edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk', 'in-chair'];
const ON_FEET: readonly Task[] = ['stand', 'walk'];
const untilSeen = (what: string, holds: readonly Task[] = UP): TriggerRow => ({
  holds,
  more: 1,
  says: `${what}: stay put until a nurse has looked; what cannot wait needs one more person`,
});
const oneMore = (what: string): TriggerRow => ({
  holds: [],
  more: 1,
  says: `${what}: re-check before moving, one more person until then`,
});

export const TRIGGER_HELP: Readonly<Record<TriggerKind, TriggerRow>> = {
  arrival: { holds: [], more: 0, says: 'Arrived: not assessed here yet' },
  'return-from-surgery': oneMore('Back from surgery'),
  'return-from-dialysis': oneMore('Back from dialysis'),
  sedation: oneMore('Sedative given'),
  'block-on': {
    holds: ON_FEET,
    more: 1,
    says: 'Nerve block on: no standing or walking until a nurse has looked, one more person',
  },
  'block-off': oneMore('Nerve block off'),
  fall: untilSeen('Fall', [...UP, 'lateral', 'from-floor']),
  faint: untilSeen('Faint'),
  seizure: untilSeen('Seizure'),
  'low-glucose': untilSeen('Low glucose'),
  bleed: untilSeen('Bleed'),
  transfusion: untilSeen('Transfusion'),
  'new-symptom': untilSeen('New symptom'),
  'new-confusion': untilSeen('New confusion'),
  'order-change': oneMore('Order changed'),
  'attachment-change': oneMore('Line, drain or oxygen changed'),
  'sheath-out': untilSeen('Sheath out'),
  'suspected-clot': untilSeen('Clot suspected'),
  'failed-attempt': oneMore('Attempt failed or stopped'),
  'step-down-from-intensive-care': oneMore('Came from intensive care'),
  'asked-to-look-again': oneMore('Someone asked to look again'),
  'board-wrong': oneMore('Someone says the board is wrong'),
  'early-warning-rise': untilSeen('Early-warning score risen'),
};
