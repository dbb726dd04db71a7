import type { TriggerKind } from '../../orders/values.ts';
import type { Session } from '../values.ts';

/**
 * The trigger that a session amounts to: lowered to the floor counts as a fall; a near-fall,
 * dizziness or a session stopped early counts as a failed attempt. Null for an ordinary session.
 * Common practice, no source.
 */
export function wentWrong(session: Session): Extract<TriggerKind, 'fall' | 'failed-attempt'> | null {
  if (session.events.includes('lowered-to-floor')) return 'fall';
  if (session.outcome === 'stopped' || session.events.some((e) => e === 'near-fall' || e === 'dizzy')) {
    return 'failed-attempt';
  }
  return null;
}
