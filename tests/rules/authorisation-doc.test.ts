import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { POLICY } from '@footboard/shared/capabilities/people/policy/document';
// @ts-expect-error a plain script without types
import { authorisation } from '../../docs/authorisation.mjs';

it('docs/authorisation.md says what the policy says (npm run docs)', () => {
  const written = readFileSync(new URL('../../docs/authorisation.md', import.meta.url), 'utf8');
  expect(written).toBe(authorisation());
  for (const { action } of POLICY) expect(written).toMatch(new RegExp(`^\\| ${action}[ :]`, 'm'));
});
