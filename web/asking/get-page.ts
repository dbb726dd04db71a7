import type { z } from 'zod';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from '@footboard/shared/wire/http';
import { told } from '../i18n/told.ts';

export type Asked<T> = { ok: true; page: T } | { ok: false; problem: Problem };

/** What a screen says when no answer came, in the same shape as a server's problem. */
export const unreachable = (what: string): Problem => ({
  type: '/problems/unreachable',
  title: 'No answer',
  status: 0,
  detail: `${what}: the ward's server did not answer.`,
  remedy: 'Check the network and try again.',
});

const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`);

/** What is wrong and what to do, as two whole sentences. */
export const problemWords = (it: Problem): string =>
  [it.detail, it.remedy]
    .filter((text) => text.trim() !== '')
    .map((text) => sentence(told(text.trim())))
    .join(' ');

/** The problem in an answer's body, or one made from its status when the body is something else. */
export async function problemOf(answer: Response): Promise<Problem> {
  const read = problem.safeParse(await answer.json().catch(() => null));
  if (read.success) return read.data;
  return {
    type: '/problems/unexpected-answer',
    title: 'Unexpected answer',
    status: answer.status,
    detail: `The server answered ${answer.status} in a form this page does not know.`,
    remedy: 'Reload the page. If it stays, tell whoever looks after this board.',
  };
}

/** GET a query of the API and check it. Never throws: a failure is a problem to show. */
export async function getPage<S extends z.ZodType>(
  path: string,
  schema: S,
  headers: Readonly<Record<string, string>> = {},
): Promise<Asked<z.infer<S>>> {
  let answer: Response;
  try {
    answer = await fetch(path, { headers: { accept: 'application/json', ...headers }, cache: 'no-store' });
  } catch {
    return { ok: false, problem: unreachable('Nothing was read') };
  }
  if (!answer.ok) return { ok: false, problem: await problemOf(answer) };
  const read = schema.safeParse(await answer.json().catch(() => null));
  if (read.success) return { ok: true, page: read.data };
  return {
    ok: false,
    problem: {
      type: '/problems/unexpected-answer',
      title: 'This page and the server do not match',
      status: answer.status,
      detail: `The answer of ${path} has a form this page does not know.`,
      remedy: 'Reload the page.',
    },
  };
}
