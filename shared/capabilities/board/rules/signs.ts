/**
 * Signs of decline and of readiness over the stay: a line on the board with its facts, never an
 * alarm. Nothing here lowers or raises help. Limits are the ward's (common practice, no source).
 */
import type { SignView } from '../activity-view.ts';
import { belowUsualWay } from './sign-below-usual.ts';
import { readyForNext } from './sign-ready.ts';
import { stagesLost } from './sign-stages-lost.ts';
import type { SignsInput } from './signs-input.ts';

/** Under the clinician's own plan there is no tier and nothing to be ready for: only refusals are told. */
export function signsOf(input: SignsInput): SignView[] {
  const begun = input.sessions.toSorted((a, b) => a.from - b.from);
  const inOrder = { ...input, sessions: begun };
  const staged = input.standing.scope.kind === 'staged';
  return [
    staged ? stagesLost(inOrder) : null,
    refusals(inOrder),
    staged ? belowUsualWay(inOrder) : null,
    staged ? readyForNext(inOrder) : null,
  ].filter((sign) => sign !== null);
}

/**
 * The last times the person was asked, each was a no. Only a no is a refusal: what did not happen
 * for want of people, kit or clearance was not asked. For the nurse and the therapist, not the aide.
 */
function refusals({ sessions, rules }: SignsInput): SignView | null {
  const asked = sessions.filter(
    ({ session: s }) => s.outcome !== 'not-done' || s.notDone?.group === 'said-no',
  );
  const lastYes = asked.findLastIndex(({ session: s }) => s.outcome !== 'not-done');
  const noes = asked.slice(lastYes + 1);
  if (noes.length < rules.signs.refusalsInRow.value) return null;
  const reasons = noes.flatMap(({ session: s }) => s.notDone?.example?.replaceAll('-', ' ') ?? []);
  const given = reasons.length > 0 ? `reasons given: ${[...new Set(reasons)].join(', ')}` : 'no reason given';
  return {
    kind: 'refusals',
    words: `Said no ${noes.length} times in a row: a nurse or therapist asks what stands in the way`,
    because: [
      {
        rule: 'signs/refusals',
        facts: noes.map((s) => s.fact.id),
        words: `The last ${noes.length} offers were declined; ${given}`,
      },
    ],
  };
}
