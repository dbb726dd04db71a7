import type { z } from 'zod';
import { problemOf, unreachable, type Asked } from '../asking/get-page.ts';
import type { PreparedCommand } from './send-command.ts';

/** A screen that waits longer than this says that it does not know. */
const ANSWER_WITHIN_MS = 8_000;

/** Asks what a command would come to, without sending it. Never throws: a failure is a problem to show. */
export async function askAbout<S extends z.ZodType>(
  command: PreparedCommand,
  schema: S,
): Promise<Asked<z.infer<S>>> {
  const nothing = { ok: false as const, problem: unreachable('Nothing was read') };
  try {
    const answer = await fetch(`/api/wards/${command.ward}/previews/${command.name}`, {
      method: 'POST',
      headers: {
        accept: 'application/json',
        'content-type': 'application/json',
        'x-footboard-device-clock': new Date().toISOString(),
        ...(command.staff ? { 'x-footboard-staff': command.staff } : {}),
      },
      body: JSON.stringify(command.body),
      signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
    });
    if (!answer.ok) return { ok: false, problem: await problemOf(answer) };
    const read = schema.safeParse(await answer.json());
    return read.success ? { ok: true, page: read.data } : nothing;
  } catch {
    return nothing;
  }
}
