/** Ready for the next stage: what a failed try of it takes back. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { check, type Told } from './history.testkit.ts';
import { did, fails, sign } from './signs.testkit.ts';

const ready = (...told: readonly Told[]) => sign('ready', 24, told);
const turned = { ...check('turn', 14.5), id: 'turned' };
const easy = [did(15, 'chair'), did(16, 'chair')];

describe('given two easy sessions at the stage cleared, then the next stage not met', () => {
  const byAide = fails('walk', 17, { role: 'aide' });
  it('nobody is ready, also where the check that says so clears nothing anew', () => {
    expect(ready(turned, ...easy)).toBeDefined();
    expect(ready(turned, ...easy, byAide)).toBeUndefined();
  });
  it('two more easy ones since then are told', () => {
    const since = [did(18, 'chair'), did(19, 'chair')];
    expect(ready(turned, ...easy, byAide, ...since)?.because[0]!.facts).toEqual(['turned', 's-18', 's-19']);
  });
});
