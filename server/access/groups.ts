/** Which group of the single sign-on provider gives which role on which ward: a JSON file of the operator. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { Role } from '@footboard/shared/kernel/author';
import { role } from '@footboard/shared/kernel/author';
import { wardId } from '@footboard/shared/kernel/ids';
import type { WardId } from '@footboard/shared/kernel/ids';
import { StartRefused } from '../platform/start-refused.ts';

const gives = z.union([
  z.strictObject({ ward: wardId, role }),
  /** Administrator of the whole server. */
  z.strictObject({ wide: z.literal(true) }),
]);
type Gives = z.infer<typeof gives>;

/** By group: one role, or a list of them for several wards. */
const rolesFile = z.record(z.string().min(1), z.union([gives, z.array(gives).min(1)]));

export interface Groups {
  /** The wards that the file speaks of. */
  readonly wards: readonly WardId[];
  /** Where two groups of a person speak of one ward, the one that stands first in the file counts. */
  given(groups: ReadonlySet<string>): { readonly wide: boolean; readonly roles: ReadonlyMap<WardId, Role> };
}

const EXAMPLE = '{"board-nurses": {"ward": "alder", "role": "nurse"}, "board-keepers": {"wide": true}}';

/** @throws StartRefused with one line: the place in the file, what is wrong, what a right one looks like. */
export function readGroups(path: string): Groups {
  const unusable = (why: string, cause?: unknown) =>
    new StartRefused(`OIDC_ROLES_FILE ${path} ${why}: write JSON like ${EXAMPLE}`, { cause });
  let written: unknown;
  try {
    written = JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    throw unusable('cannot be read as JSON', error);
  }
  const parsed = rolesFile.safeParse(written);
  if (!parsed.success) {
    const places = parsed.error.issues.map(({ path: at }) => `"${at.map(String).join('/')}"`);
    throw unusable(`is not right at ${[...new Set(places)].slice(0, 5).join(', ')}`, parsed.error);
  }
  const lines = Object.entries(parsed.data).flatMap(([group, given]) =>
    [given].flat().map((one): readonly [string, Gives] => [group, one]),
  );
  if (lines.length === 0) throw unusable('names no group');
  return {
    wards: [...new Set(lines.flatMap(([, one]) => ('ward' in one ? [one.ward] : [])))],
    given(groups) {
      const own = lines.flatMap(([group, one]) => (groups.has(group) ? [one] : []));
      const roles = new Map<WardId, Role>();
      for (const one of own) if ('ward' in one && !roles.has(one.ward)) roles.set(one.ward, one.role);
      return { wide: own.some((one) => 'wide' in one), roles };
    },
  };
}
