/** A protocol that would miss who sits unheld, or count a standing that was hardly begun. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { checkProtocol, DEFAULT_PROTOCOL, protocolWarnings, type Protocol } from './protocol.ts';

const own = (change: (p: Protocol) => void): Protocol => {
  const p = structuredClone(DEFAULT_PROTOCOL);
  p.id = 'own';
  change(p);
  return p;
};
const faults = (p: Protocol) => {
  const checked = checkProtocol(p);
  return 'faults' in checked ? checked.faults : [];
};

describe('the minutes at which a pressure set measures on the feet', () => {
  const at = (...minutes: number[]) => faults(own((p) => (p.pressureSet.standingMinutes = minutes)));

  it.each([0, 0.25, 0.99])('are refused at %s, with the place and what it would do', (minute) => {
    expect(at(minute, 3)).toEqual([
      {
        place: '/pressureSet/standingMinutes/0',
        reason:
          'must be at least 1 min: a reading at once on rising would count as a whole set, and a later fall would never be seen',
      },
    ]);
  });
  it('are taken from 1', () => {
    expect(at(1)).toEqual([]);
    expect(at(1, 3)).toEqual([]);
  });
});

describe('sitting unheld', () => {
  const warned = (change: (p: Protocol) => void) => {
    const p = own(change);
    expect(faults(p)).toEqual([]);
    return protocolWarnings(p);
  };
  const edge = (p: Protocol) => p.stages.find((s) => s.shows === 'edge')!;
  const sits = (p: Protocol) => edge(p).parts.find((part) => part.shows === 'sits-unheld')!;

  it('that no part shows, is warned of', () => {
    expect(
      warned((p) => (edge(p).parts = edge(p).parts.filter((part) => part.shows !== 'sits-unheld'))),
    ).toEqual([
      {
        place: '/stages',
        reason:
          'no part shows "sits-unheld": whoever clears the edge counts as sitting unheld, though nobody looked',
      },
    ]);
  });
  it('that only informs, is warned of at its place', () => {
    expect(warned((p) => (sits(p).gate = 'informs'))).toEqual([
      {
        place: '/stages/2/parts/1/gate',
        reason:
          'the part that shows "sits-unheld" only informs: whoever falls over sitting counts as sitting unheld; write "required"',
      },
    ]);
  });
  it('that decides in one place and informs in another, is enough', () => {
    expect(
      warned((p) => {
        edge(p).parts.push({ ...sits(p), id: 'sits-again', gate: 'informs' });
      }),
    ).toEqual([]);
  });
  it('in a protocol in which nobody comes to the edge, is not asked for', () => {
    const reasons = warned((p) => (p.stages = p.stages.filter((s) => s.shows !== 'edge'))).map(
      (w) => w.reason,
    );
    expect(reasons.join('\n')).not.toContain('sits-unheld');
  });
});
