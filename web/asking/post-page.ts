import type { z } from 'zod';
import { problemOf, unreachable, type Asked } from './get-page.ts';

/**
 * POST a question of the API and check its answer: for what is worked out and written nowhere. Null
 * when `signal` was aborted: whoever asked has stopped it. Never throws.
 */
export async function postPage<S extends z.ZodType>(
  path: string,
  body: unknown,
  schema: S,
  { staff, signal }: { readonly staff: string | null; readonly signal: AbortSignal },
): Promise<Asked<z.infer<S>> | null> {
  try {
    const answer = await fetch(path, {
      method: 'POST',
      headers: {
        accept: 'application/json',
        'content-type': 'application/json',
        ...(staff ? { 'x-footboard-staff': staff } : {}),
      },
      body: JSON.stringify(body),
      signal,
    });
    if (!answer.ok) return { ok: false, problem: await problemOf(answer) };
    const read = schema.safeParse(await answer.json());
    if (read.success) return { ok: true, page: read.data };
  } catch {
    if (signal.aborted) return null;
  }
  return { ok: false, problem: unreachable('Nothing was worked out') };
}
