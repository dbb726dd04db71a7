/** What was seen or ordered and stands against starting, asked by itself. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Capability } from '../../handling/rules/types.ts';
import type { Cooperation, Finding, StageRecord } from '../values.ts';
import { assessment, fact, hours, notMet, tierInput, upTo } from './assessment.testkit.ts';
import type { Assessment } from './judge-stage.ts';
import { checkUnder, findingsMet, LONG } from './own-protocol.testkit.ts';
import { protocolLookup, type ProtocolPart } from './protocol.ts';
import { cooperationReasons, orderReasons, stageReasons } from './start-in-force.ts';
import { judgeTier } from './tier.ts';

const tierOf = (facts: readonly Fact[], protocols = protocolLookup([])) =>
  judgeTier({ ...tierInput(facts), protocols });
const stages = (...facts: Fact[]) =>
  stageReasons(tierOf(facts), protocolLookup([])).map((r) => [r.words, ...r.facts]);

describe('the start of the last check', () => {
  it('has nothing against it once it was cleared, or was never asked', () => {
    expect(stages(assessment(upTo('walk')))).toEqual([]);
    expect(stages()).toEqual([]);
  });
  it('names each part that was not met, with the check', () => {
    const failed = notMet('wakes-to-voice', 'no-new-chest-pain');
    expect(stages(assessment(upTo('clear', { clear: failed }), { id: 'check' }))).toEqual([
      ['Wakes to voice and stays awake: not met at the last check', 'check'],
      ['No new chest pain: not met at the last check', 'check'],
    ]);
  });
  it('is not what was found at a later stage, when a sign stood against starting', () => {
    const low = {
      kind: 'pressure',
      posture: 'lying',
      systolic: 70,
      diastolic: 40,
      at: toIso(hours(0)),
    } as const;
    const ill = upTo('edge', { edge: { symptom: true, outcome: 'not-met' } });
    expect(tierOf([assessment(ill, {}, { readings: [low] })]).seen.stages.get('clear')?.outcome).toBe(
      'not-met',
    );
    expect(stages(assessment(ill, {}, { readings: [low] }))).toEqual([]);
  });
  const unreadable = (at: number, id: string, version: number) =>
    assessment(upTo('clear', { clear: notMet() }), { at, id }, { protocol: { id: 'gone', version } });
  it('that cannot be read and found less asks first, by the last such check alone', () => {
    expect(stages(unreadable(1, 'one', 1), unreadable(2, 'two', 2))).toEqual([
      ['Protocol gone version 2 is not known here: it has a stage not met, so nothing stays cleared', 'two'],
    ]);
  });
  it('does not ask for what else was remarked of a check', () => {
    const byAide = assessment({ upright: {} }, { at: 3, id: 'aide', role: 'aide' });
    expect(stages(byAide)).toEqual([]);
    expect(stages(unreadable(2, 'two', 2), byAide)).toEqual([[expect.stringContaining('version 2'), 'two']]);
  });
  it('is looked up by what the stage shows, wherever an older document has it', () => {
    // Published before the stage that clears the start had to be the first.
    const older = {
      ...LONG,
      id: 'older',
      stages: [{ ...LONG.stages[1]!, id: 'before', word: null }, ...LONG.stages],
    };
    const protocols = protocolLookup([{ id: 'older', version: 1, document: older }]);
    const data: Assessment = checkUnder(older, 'look', hours(0), {
      look: { outcome: 'not-met', findings: [{ part: 'fit-to-begin', result: 'not-met' }] },
    });
    const tier = tierOf([fact('assessment-recorded', data, { id: 'check' })], protocols);
    expect(stageReasons(tier, protocols).map((r) => r.words)).toEqual([
      'The part fit-to-begin: not met at the last check',
    ]);
  });
});

describe("the start under a ward's own document", () => {
  const part = (id: string, says: string, gate: ProtocolPart['gate'], sided: boolean): ProtocolPart => ({
    id,
    says,
    gate,
    sided,
    source: 'invented',
  });
  const parts = [
    part('arm', 'Lifts an arm', 'one-side', true),
    part('day', 'Tells the day', 'informs', false),
    part('eye', 'Opens the eye', 'required', true),
  ];
  const OWN = { ...LONG, stages: LONG.stages.map((s, i) => (i === 0 ? { ...s, parts } : s)) };
  const protocols = protocolLookup([{ id: OWN.id, version: OWN.version, document: OWN }]);
  const against = (failed: readonly string[], more: Partial<StageRecord> = { outcome: 'not-met' }) => {
    const findings = findingsMet(OWN.stages[0]!).map((f): Finding => {
      const key = f.side ? `${f.part}/${f.side}` : f.part;
      return failed.includes(key) ? { ...f, result: 'not-met' } : f;
    });
    const data = checkUnder(OWN, 'look', hours(0), { look: { findings, ...more } });
    const tier = tierOf([fact('assessment-recorded', data, { id: 'check' })], protocols);
    return stageReasons(tier, protocols).map((r) => [r.words, ...r.facts]);
  };
  it.each<[string, readonly string[], string]>([
    ['one side that is enough is no part failed', ['arm/right'], 'look'],
    ['neither side is', ['arm/left', 'arm/right'], 'Lifts an arm'],
    ['a part that only informs is none either', ['day'], 'look'],
    ['of a part asked of both sides one that fails is', ['eye/left'], 'Opens the eye'],
  ])('%s', (_, failed, named) => {
    expect(against(failed)).toEqual([[`${named}: not met at the last check`, 'check']]);
  });
  it('a symptom that stops it is said, with the check', () => {
    expect(against([], { symptom: true })).toEqual([['A symptom at the start of the last check', 'check']]);
  });
});

describe('an order', () => {
  const activity = (value: 'bed' | 'edge-of-bed' | 'chair' | 'no-limit' | null) =>
    orderReasons({
      activity: value && { value, fact: 'order' as EventId, at: hours(1) },
    } as Parameters<typeof orderReasons>[0]).map((r) => [r.word, r.words, ...r.facts]);
  it('is said where it keeps the person in bed or at its edge, and nowhere else', () => {
    expect(activity('bed')).toEqual([['not-now', 'order: stays in bed', 'order']]);
    expect(activity('edge-of-bed')).toEqual([
      ['ask-first', 'order: up to the edge of the bed only', 'order'],
    ]);
    expect(activity('chair')).toEqual([]);
    expect(activity('no-limit')).toEqual([]);
    expect(activity(null)).toEqual([]);
  });
});

describe('help not waited for, instructions not followed', () => {
  const said = (at: number, cooperation: Cooperation) =>
    assessment(upTo('upright'), { at, id: `at-${at}` }, { cooperation });
  const reasons = (capability: Pick<Capability, 'waitsForHelp' | 'followsInstructions'>, ...facts: Fact[]) =>
    cooperationReasons(capability as Capability, tierOf(facts)).map((r) => [r.words, ...r.facts]);
  const well: Cooperation = { waitsForHelp: 'yes', followsInstructions: 'yes' };
  it('nothing is against whoever does both', () => {
    expect(reasons(well, said(1, well))).toEqual([]);
  });
  it('name the last check that said so, not a better one since', () => {
    const worst: Cooperation = { waitsForHelp: 'varies', followsInstructions: 'no' };
    const facts = [
      said(1, worst),
      said(2, { waitsForHelp: 'varies', followsInstructions: 'yes' }),
      said(3, well),
    ];
    expect(reasons(worst, ...facts)).toEqual([
      ['waits for help only sometimes: never alone', 'at-2'],
      ['does not follow instructions: ask who should be there and how to ask', 'at-1'],
    ]);
  });
  it('name nobody while it is not known', () => {
    expect(reasons({ waitsForHelp: 'not known', followsInstructions: 'not known' })).toEqual([
      ['not known whether the person waits for help: never alone'],
      ['not known whether the person follows instructions'],
    ]);
  });
});
