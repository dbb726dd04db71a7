/**
 * The plan that would follow a check which is not sent yet. The server works it out from all that it
 * knows of the stay, by the rules of the board; it records nothing. Without an answer nothing is made up.
 */
import { shallowRef, watch, type ShallowRef } from 'vue';
import type { Problem } from '@footboard/shared/wire/http';
import { planPreview, type PlanPreview } from '@footboard/shared/wire/preview';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { toIso } from '@footboard/shared/kernel/times';
import { askAbout } from '../../commanding/ask-about.ts';
import { prepareCommand } from '../../commanding/send-command.ts';
import { useEntryContext } from '../entry/use-entry.ts';

export type PlanSeen =
  | { readonly at: 'asking' }
  | { readonly at: 'known'; readonly preview: PlanPreview }
  /** Sent as it stands it would be refused, and why. */
  | { readonly at: 'refused'; readonly problem: Problem }
  /** No answer, or none for whoever is here: it will be known when the entry is sent. */
  | { readonly at: 'not-known'; readonly why: 'no-answer' | 'nobody-signed-in' };

/** `data` is the entry's, or null while there is nothing to ask about. A late answer of an earlier asking is dropped. */
export function usePlanPreview(data: () => object | null): Readonly<ShallowRef<PlanSeen | null>> {
  const context = useEntryContext();
  const seen = shallowRef<PlanSeen | null>(null);
  let asked = 0;
  watch(
    // A note changes no plan: nothing is asked anew while it is written.
    () => {
      const { note: _note, ...rest } = (data() ?? {}) as Record<string, unknown>;
      return data() === null ? null : JSON.stringify(rest);
    },
    async (about) => {
      const turn = ++asked;
      seen.value = about === null ? null : { at: 'asking' };
      if (about === null) return;
      const answer = await askAbout(
        prepareCommand({
          ward: context.ward,
          name: recordAssessment.name,
          data: JSON.parse(about) as unknown,
          occurred: { at: toIso(Math.round(context.now())), precision: 'exact' },
        }),
        planPreview,
      );
      if (turn === asked)
        seen.value = answer.ok ? { at: 'known', preview: answer.page } : without(answer.problem);
    },
    { immediate: true },
  );
  return seen;
}

/** Only a "no" to the entry itself is one that sending it would meet too. */
function without(problem: Problem): PlanSeen {
  if (problem.status === 401) return { at: 'not-known', why: 'nobody-signed-in' };
  return problem.status === 403 || problem.status === 409 || problem.status === 422
    ? { at: 'refused', problem }
    : { at: 'not-known', why: 'no-answer' };
}
