import { onMounted, shallowRef, type ShallowRef } from 'vue';
import type { z } from 'zod';
import type { Problem } from '@footboard/shared/wire/http';
import { getPage } from './get-page.ts';

/** One query of the API, asked when the part is mounted and whenever `ask` is called. A late answer of an earlier asking is dropped. */
export function useAsked<S extends z.ZodType>(
  path: () => string,
  schema: S,
): {
  readonly page: ShallowRef<z.infer<S> | null>;
  readonly problem: ShallowRef<Problem | null>;
  ask(): Promise<void>;
} {
  const page: ShallowRef<z.infer<S> | null> = shallowRef(null);
  const problem = shallowRef<Problem | null>(null);
  let asked = 0;
  async function ask(): Promise<void> {
    const turn = ++asked;
    const answer = await getPage(path(), schema);
    if (turn !== asked) return;
    problem.value = answer.ok ? null : answer.problem;
    if (answer.ok) page.value = answer.page;
  }
  onMounted(ask);
  return { page, problem, ask };
}
