/**
 * Trust in the plan: current, to be re-checked, or not known. Source: design, trust row. The instant
 * asked about is `t`; `note` is told each later instant at which an answer changes by time alone.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { ifAny, type Because } from '../because.ts';
import type { DueView, TrustView } from '../moving-view.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';
import { dueView } from './due.ts';
import { say, saidAt, validityFrom, type TrustInput } from './validity.ts';

export function trustAndDue(input: TrustInput): { trust: TrustView; due: DueView } {
  const { standing, triggers, renewal, t } = input;
  if (standing.scope.kind !== 'staged') return outsideTheStagedCheck(input);
  const validity = renewal && validityFrom(renewal, input);
  const open = triggers.open.filter((o) => !(o.kind === 'arrival' && renewal === null));

  const reasons: Because[] = open.map((o) =>
    say('trust/trigger', [o.event], `${o.words}, ${saidAt(input, o.at)}`),
  );
  for (const c of input.conflicts) reasons.push(say('trust/conflict', [c.safer, c.other], c.words));
  if (renewal && validity) {
    if (t >= validity.until) {
      const { fact, lesser } = renewal;
      const far = lesser ? 'as far as what stands cleared ' : '';
      const words = `Last check ${far}${saidAt(input, renewal.at)}: validity ran out`;
      reasons.push(say('trust/ran-out', lesser ? [fact.id, lesser.id] : [fact.id], words));
    } else if (validity.moveBecause && t >= validity.nextMoveFrom) reasons.push(validity.moveBecause);
    input.note(validity.until);
    input.note(validity.nextMoveFrom);
  }
  const state = !renewal ? 'not-known' : reasons.length > 0 ? 're-check' : 'current';
  const standsOn = renewal
    ? say(
        'trust/current',
        [renewal.fact.id],
        `${renewal.fact.type === 'plan-confirmed' ? 'Confirmed' : 'Checked'} ${saidAt(input, renewal.at)}`,
      )
    : say('trust/not-known', ifAny(arrivalOf(input.facts)), 'Not checked on this ward');
  return {
    trust: {
      state,
      openTriggers: triggers.open.map(({ event, kind, at, words }) => ({ event, kind, at, words })),
      conflicts: [...input.conflicts],
      because: state === 're-check' ? reasons : [standsOn, ...reasons],
    },
    due: dueView(renewal, validity, open, input),
  };
}

function outsideTheStagedCheck({ standing, triggers, conflicts }: TrustInput): {
  trust: TrustView;
  due: DueView;
} {
  const comfort = standing.scope.kind === 'comfort';
  const words = comfort ? 'Comfort plan' : "Clinician's plan only";
  const facts: EventId[] = ifAny(standing.scopeFact?.id);
  const open = triggers.open.filter((o) => o.kind !== 'arrival');
  const state = open.length > 0 || conflicts.length > 0 ? 're-check' : 'current';
  return {
    trust: {
      state,
      openTriggers: open.map(({ event, kind, at, words: w }) => ({ event, kind, at, words: w })),
      conflicts: [...conflicts],
      because: [
        say('trust/scope', facts, words),
        ...open.map((o) => say('trust/trigger', [o.event], o.words)),
        ...conflicts.map((c) => say('trust/conflict', [c.safer, c.other], c.words)),
      ],
    },
    due: { state: 'none', at: null, because: [say('due/scope', facts, `${words}: no staged check is due`)] },
  };
}
