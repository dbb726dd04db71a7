/** The checks that can be made before anything is sent: the command's own schema, as faults by field. */
import type { z } from 'zod';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import type { Problem } from '@footboard/shared/wire/http';

export interface Fault {
  /** JSON pointer within the command's data, "" for the whole. */
  readonly pointer: string;
  readonly detail: string;
  readonly remedy?: string | undefined;
}

const pointerOf = (path: readonly PropertyKey[]): string => path.map((step) => `/${String(step)}`).join('');

export function checkBeforeSending(command: CommandType, data: unknown): readonly Fault[] {
  const result = (command.data as z.ZodType).safeParse(data);
  return result.success ? [] : faultsOfIssues(result.error.issues);
}
export const faultsOfIssues = (
  issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[],
): readonly Fault[] => issues.map((issue) => ({ pointer: pointerOf(issue.path), detail: issue.message }));

/** A server's problem as faults by field; a pointer into the envelope's `data` is cut to the data. */
export const faultsOf = (problem: Problem): readonly Fault[] =>
  (problem.errors ?? []).map((e) => ({
    pointer: e.pointer.replace(/^#?\/data(?=\/|$)/, ''),
    detail: e.detail,
    remedy: e.remedy,
  }));

/** Faults at this field or below it. */
export const faultsAt = (faults: readonly Fault[], pointer: string): readonly Fault[] =>
  faults.filter((f) => f.pointer === pointer || f.pointer.startsWith(`${pointer}/`));

/** Faults of no field that the form shows. */
export const faultsElsewhere = (faults: readonly Fault[], shown: readonly string[]): readonly Fault[] =>
  faults.filter((f) => !shown.some((p) => f.pointer === p || f.pointer.startsWith(`${p}/`)));
