import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
// @ts-expect-error a plain script without types
import { clinicalRules } from '../../docs/clinical-rules.mjs';

it('docs/clinical-rules.md says what the program runs (npm run docs)', () => {
  const written = readFileSync(new URL('../../docs/clinical-rules.md', import.meta.url), 'utf8');
  expect(written).toBe(clinicalRules());
});
