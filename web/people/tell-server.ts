import type { z } from 'zod';
import type { Problem } from '@footboard/shared/wire/http';
import { problemOf, unreachable, type Asked } from '../asking/get-page.ts';

/** An answer of the server, and when it gave it. */
export type Told<T> = Asked<T> & {
  /** The server's clock when it answered (epoch ms, whole seconds); null without an answer. */
  readonly clock: number | null;
};

/**
 * Ask or tell the server on matters of access, the answer checked. Never throws: a failure is a
 * problem to show. Bodies hold passwords and codes: nothing of them is kept or logged here.
 */
export async function tellServer<S extends z.ZodType>(
  method: 'GET' | 'POST' | 'DELETE',
  path: string,
  schema: S,
  body: object = {},
  more: Readonly<Record<string, string>> = {},
): Promise<Told<z.infer<S>>> {
  let answer: Response;
  try {
    answer = await fetch(path, {
      method,
      headers: { accept: 'application/json', 'content-type': 'application/json', ...more },
      cache: 'no-store',
      ...(method === 'GET' ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    const what = method === 'GET' ? 'Nothing was read' : 'Nothing was changed';
    return { ok: false, problem: unreachable(what), clock: null };
  }
  const clock = serverClock(answer);
  if (!answer.ok) return { ok: false, problem: await problemOf(answer), clock };
  const read = schema.safeParse(await answer.json().catch(() => null));
  return read.success
    ? { ok: true, page: read.data, clock }
    : { ok: false, problem: unreadable(answer), clock };
}

/** The Date header (RFC 9110, 6.6.1), so that a wrong device clock does not move the end of a window. */
export function serverClock(answer: Response): number | null {
  const at = Date.parse(answer.headers.get('date') ?? '');
  return Number.isNaN(at) ? null : at;
}

const unreadable = (answer: Response): Problem => ({
  type: '/problems/unexpected-answer',
  title: 'This page and the server do not match',
  status: answer.status,
  detail: 'The answer has a form this page does not know.',
  remedy: 'Reload the page.',
});

/** The last part of a problem's type: "wrong-code". */
export const problemCode = (it: Problem | null): string => it?.type.split('/').at(-1) ?? '';

/** What is wrong with one field of a request, by its JSON pointer. */
export const faultAt = (it: Problem | null, pointer: string): string | undefined =>
  it?.errors?.find((one) => one.pointer === pointer)?.detail;
