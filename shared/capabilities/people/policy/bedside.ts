import type { Role } from '../../../kernel/author.ts';
import { policyRow } from './document.ts';

/** Roles that go to the bedside: those who may take a visit. */
export const bedsideRoles: ReadonlySet<Role> = new Set(
  (policyRow('take-visit')?.actors ?? []).filter((one): one is Role => one !== 'device' && one !== 'wall'),
);
