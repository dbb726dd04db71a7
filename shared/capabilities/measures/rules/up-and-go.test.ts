/** Up and go. Its source stands beside the check. */
import { describe, expect, it } from 'vitest';
import { judged, says, upAndGo } from './measures.testkit.ts';

describe('up and go: CDC STEADI Timed Up and Go (2017), 12 s or more', () => {
  it('at 12 s is at risk of falling, just under it is not over the cut point', () => {
    expect(says(upAndGo(12))).toBe('At risk of falling: 12 s or more.');
    expect(says(upAndGo(11.9))).toBe('Under the cut point for risk of falling (12 s).');
    expect(judged(upAndGo(11.9)).source).toBe(
      'US Centers for Disease Control and Prevention, timed up and go (2017)',
    );
  });
  // Ranges of the same test as the page of LOINC 89422-0 tells them: under 10 s no difficulty, over 30 s dependent
  // on others. The one cut point shown must not contradict either of them.
  it.each([5, 8, 9.9])(
    'at %d s, under the 10 s of somebody without difficulty, is under the cut point',
    (s) => {
      expect(says(upAndGo(s))).toBe('Under the cut point for risk of falling (12 s).');
    },
  );
  it.each([30, 30.1, 31, 120])('at %d s, where a person depends on others, is at risk', (s) => {
    expect(says(upAndGo(s))).toBe('At risk of falling: 12 s or more.');
    expect(judged(upAndGo(s)).words).toContain(`${s} s`);
  });
  it('not managed reads as at risk, never as nought seconds', () => {
    expect(says(upAndGo(null))).toBe('Not managed: reads as at risk of falling (12 s or more).');
    expect(judged(upAndGo(null)).words).toBe('Up and go over 3 m: not managed');
  });
  it('with a support says that only a walk with the same compares', () => {
    expect(judged(upAndGo(10)).warnings).toEqual([]);
    expect(judged(upAndGo(10, 'frame')).warnings).toEqual([
      'Walked with a frame: compare it only with a walk with the same.',
    ]);
    expect(judged(upAndGo(10, 'crutches')).warnings[0]).toContain('Walked with crutches:');
    expect(judged(upAndGo(10, 'two-sticks')).warnings[0]).toContain('Walked with two sticks:');
  });
});
