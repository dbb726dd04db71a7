import { describe, expect, it } from 'vitest';
import { isQualified, role } from '../../../kernel/author.ts';
import { COMMAND_TYPES } from '../../registry.ts';
import { ACTORS, POLICY, WITHOUT_A_WARD, policyRow } from './document.ts';

/** Roles and actions: users' roles table (common practice, no source). */
describe('the policy document', () => {
  it('speaks of every command there is, once, and of nothing twice', () => {
    const names = [...POLICY.map((row) => row.action), ...Object.keys(WITHOUT_A_WARD)];
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect([...COMMAND_TYPES.keys()].filter((name) => policyRow(name)?.kind !== 'command')).toEqual([]);
  });
  it('lets every role make it safer', () => {
    const safer = POLICY.filter((row) => row.moves === 'safer');
    expect(safer.length).toBeGreaterThan(2);
    for (const row of safer) expect(row.actors).toEqual(expect.arrayContaining(role.options));
  });
  it('lets only the qualified make it freer', () => {
    const freer = POLICY.filter((row) => row.moves === 'freer');
    expect(freer.length).toBeGreaterThan(8);
    for (const { action, actors } of freer) {
      const others = actors.filter((a) => a === 'device' || a === 'wall' || !isQualified({ role: a }));
      expect({ action, others }).toEqual({ action, others: [] });
    }
  });
  it('lets neither a wall nor a device without a person enter, keep or take out anything', () => {
    for (const row of POLICY.filter((r) => ['command', 'export', 'account'].includes(r.kind))) {
      expect({
        action: row.action,
        actors: row.actors.filter((a) => a === 'wall' || a === 'device'),
      }).toEqual({
        action: row.action,
        actors: [],
      });
    }
  });
  it('shows a wall one board, the initials where its level allows them, and nothing else', () => {
    expect(
      POLICY.filter((r) => r.actors.includes('wall'))
        .map((r) => r.action)
        .toSorted(),
    ).toEqual(['join-ward', 'leave-ward', 'read-board', 'read-initials', 'say-painted']);
  });
  it('says what somebody does instead, wherever not everyone may', () => {
    for (const row of POLICY) {
      if (role.options.every((r) => row.actors.includes(r))) continue;
      expect(row.instead).toMatch(/^[A-Z].+[.]$/);
    }
  });
  it('has rights of its own for every actor', () => {
    for (const actor of ACTORS) expect(POLICY.some((row) => row.actors.includes(actor))).toBe(true);
  });
});
