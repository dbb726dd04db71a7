/** What the last check found wanting carries the time of that check: a screen counts its age. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';

const reasons = (t: number, ...told: Told[]) => under(ward, t, ...told);
const under = (of: typeof ward, t: number, ...told: Told[]) =>
  evaluateStay(stayOf(...told), of, calendar, hours(t)).view.mayStart!.reasons;
const CLEAR = DEFAULT_PROTOCOL.stages[0]!;
/** A check of the start alone with one part of it not met. */
const failed = (part: string, at: number): Told => {
  const told = check('clear', at, { clear: { outcome: 'not-met' } });
  const payload = structuredClone(told.payload) as {
    stages: { findings: { part: string; result: string }[] }[];
  };
  for (const f of payload.stages[0]!.findings) f.result = f.part === part ? 'not-met' : 'met';
  return { ...told, id: 'failed', payload };
};

describe('a reason from the last check', () => {
  it.each(CLEAR.parts.map((p) => [p.says, p.id]))('says when: %s', (says, part) => {
    const words = `${says}: not met at the last check`;
    const of = (t: number) => reasons(t, failed(part, 2)).find((r) => r.words === words);
    expect(of(3)).toMatchObject({ word: 'not-now', takenAt: hours(2), facts: ['failed'] });
    // However old it is: it is not forgotten, and its age is seen.
    expect(of(60)).toMatchObject({ word: 'not-now', takenAt: hours(2) });
  });
  it('says when: a symptom at its start, where a ward lets that stop it', () => {
    const document = structuredClone(DEFAULT_PROTOCOL);
    Object.assign(document, { id: 'ours', version: 1 });
    Object.assign(document.stages[0]!, { symptomStops: true });
    const ours = { ...ward, protocols: [{ id: 'ours', version: 1, document }] };
    const protocol = { id: 'ours', version: 1 };
    const told = { ...check('clear', 2, { clear: { symptom: true } }, { protocol }), id: 'ill' };
    expect(under(ours, 3, told)).toContainEqual(
      expect.objectContaining({
        words: 'A symptom at the start of the last check',
        takenAt: hours(2),
        facts: ['ill'],
      }),
    );
  });
  it('says when: a stage not met without a finding', () => {
    const told = failed('none', 2);
    (told.payload as { stages: { findings: unknown[] }[] }).stages[0]!.findings = [];
    expect(reasons(3, told)).toContainEqual(
      expect.objectContaining({ words: 'clear: not met at the last check', takenAt: hours(2) }),
    );
  });
  it.each([
    ['no', 'yes', 'does not wait for help: never alone'],
    ['varies', 'yes', 'waits for help only sometimes: never alone'],
    ['yes', 'no', 'does not follow instructions: ask who should be there and how to ask'],
  ])('says when: waits for help %s, follows instructions %s', (waitsForHelp, followsInstructions, words) => {
    const one = check('walk', 2, {}, { cooperation: { waitsForHelp, followsInstructions } });
    const well = check('walk', 4);
    const of = reasons(5, { ...one, id: 'worst' }, well).find((r) => r.words === words);
    expect(of).toMatchObject({ word: 'ask-first', takenAt: hours(2), facts: ['worst'] });
  });
  it('says no time of what nobody ever saw', () => {
    const words = 'not known whether the person waits for help: never alone';
    expect(reasons(3).find((r) => r.words === words)).toMatchObject({ takenAt: null });
  });
});
