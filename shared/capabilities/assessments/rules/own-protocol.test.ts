/** A ward's own protocol through the same rules: everything comes from the document. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  canonical,
  hours,
  recordOf,
  setUpWard,
  stayOf,
  ward as plainWard,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { histories } from '../../board/rules/random-history.testkit.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { dayPlan, planInput } from '../../handling/rules/plan.testkit.ts';
import { planStay } from '../../handling/rules/plan.ts';
import type { Task } from '../../handling/values.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';
import type { StageRecord } from '../values.ts';
import { assessment, notMet, upTo } from './assessment.testkit.ts';
import { checkUnder, findingsMet, LONG, RENAMED, renamed, SHORT } from './own-protocol.testkit.ts';
import { checkProtocol, DEFAULT_PROTOCOL, protocolWarnings, type Protocol } from './protocol.ts';
import { NOT_KNOWN } from './tier.ts';

function wardWith(...published: Protocol[]) {
  const log = new WardLog();
  setUpWard(log);
  for (const { id, version, ...rest } of published) {
    const document = { id, version, ...rest };
    log.add(`ward/${WARD}`, { type: 'protocol-published', payload: { id, version, document } });
  }
  return foldWard(WARD, log.events)!;
}
type Says = Readonly<Record<string, Partial<StageRecord>>>;
const told = (
  of: Protocol,
  last: string,
  at: number,
  says: Says = {},
  role: Told['role'] = 'nurse',
): Told => ({
  type: 'assessment-recorded',
  at,
  role: role!,
  payload: checkUnder(of, last, hours(at), says),
});
const weighed: Told = { type: 'weight-recorded', at: 0.5, payload: { weight: { kg: 70, how: 'measured' } } };
const view = (at: number, published: Protocol[], ...all: Told[]): StayView =>
  evaluateStay(stayOf(weighed, ...all), wardWith(...published), calendar, hours(at)).view;
const plan = (v: StayView, task: Task): TaskPlan => v.plan!.day.find((p) => p.task === task)!;
const inBrief = ({ hold, people, aid }: TaskPlan) => [hold ? 'hold' : 'go', people, aid];
const failed = (of: Protocol, id: string, part: string, side?: 'left' | 'right'): Says => {
  const stage = of.stages.find((s) => s.id === id)!;
  const findings = findingsMet(stage).map((f) =>
    f.part === part && f.side === side ? { ...f, result: 'not-met' as const } : f,
  );
  return { [id]: { outcome: 'not-met', findings } };
};

describe('a protocol of three stages', () => {
  it('is taken, with what it leaves out said', () => {
    expect(checkProtocol(SHORT)).toEqual({ ok: SHORT });
    expect(protocolWarnings(SHORT).map((w) => w.reason.split(':')[0])).toEqual([
      'no stage shows "stand"',
      'no stage shows "turn"',
      'no stage shows "walk"',
    ]);
  });
  it.each<[string, string, number]>([
    ['look', 'Lying', 0],
    ['sit-up', 'Sits up', 1 / 2],
    ['side', 'At the side', 1],
  ])('cleared up to %s is "%s"', (last, word, notch) => {
    expect(view(2, [SHORT], told(SHORT, last, 1)).tier).toMatchObject({
      word,
      notch,
      protocol: { id: 'short', version: 1 },
    });
  });
  it('tells the plan what its stages mean: the side of the bed by oneself, and no weight on the feet', () => {
    const all = view(2, [SHORT], told(SHORT, 'side', 1));
    expect(inBrief(plan(all, 'edge-of-bed'))).toEqual(['go', 'stand-by', 'none']);
    expect(plan(all, 'stand').hold).toBe(true);
    const bed = view(2, [SHORT], told(SHORT, 'sit-up', 1));
    expect(inBrief(plan(bed, 'edge-of-bed'))).toEqual(['go', 'two', 'slide-sheet']);
    const lying = view(2, [SHORT], told(SHORT, 'look', 1));
    expect(inBrief(plan(lying, 'edge-of-bed'))).toEqual(['go', 'two', 'sling-lift']);
  });
  it('the next check speaks of its stages', () => {
    expect(view(1, [SHORT]).nextCheck?.from).toBe('look');
    expect(view(2, [SHORT], told(SHORT, 'sit-up', 1)).nextCheck).toMatchObject({
      depth: 'full',
      from: 'sit-up',
    });
    expect(view(2, [SHORT], told(SHORT, 'side', 1)).nextCheck).toMatchObject({
      depth: 'confirm',
      from: 'side',
    });
  });
});

describe('a pressure drop where nobody stands in the check', () => {
  it('asks for the pressures from the last stage cleared', () => {
    const fell = told(SHORT, 'side', 1);
    const reading = (posture: string, systolic: number, at: number) => ({
      kind: 'pressure',
      posture,
      systolic,
      diastolic: 70,
      at: new Date(hours(at)).toISOString(),
    });
    Object.assign(fell.payload as object, {
      readings: [reading('lying', 130, 1), reading('seated', 108, 1.05)],
    });
    const v = view(2, [SHORT], fell);
    expect(v.nextCheck).toMatchObject({ depth: 'full-with-pressure', from: 'side' });
    expect(v.tier.because.map((b) => b.rule)).toContain('rising/fell');
  });
});

describe('a protocol of nine stages', () => {
  it('is taken, and leaves nothing out', () => {
    expect(checkProtocol(LONG)).toEqual({ ok: LONG });
    expect(protocolWarnings(LONG)).toEqual([]);
  });
  it.each<[string, string, number]>([
    ['look', 'Lying', 0],
    ['roll', 'Rolls', 1],
    ['sit-up', 'Sits up', 2],
    ['side', 'At the side', 3],
    ['lean', 'Leans', 4],
    ['rise', 'On the feet', 5],
    ['step', 'Steps', 6],
    ['go', 'Goes', 7],
    ['stairs', 'Stairs', 8],
  ])('cleared up to %s is "%s"', (last, word, place) => {
    expect(view(2, [LONG], told(LONG, last, 1)).tier).toMatchObject({ word, notch: place / 8 });
  });
  it('moves the plan only by what a stage means', () => {
    const plans = (last: string) => view(2, [LONG], told(LONG, last, 1)).plan;
    const brief = (last: string) => plans(last)!.day.map(inBrief);
    expect(brief('roll')).toEqual(brief('look'));
    expect(brief('lean')).toEqual(brief('side'));
    expect(brief('stairs')).toEqual(brief('go'));
    expect(inBrief(plan(view(2, [LONG], told(LONG, 'rise', 1)), 'stand'))).toEqual([
      'go',
      'stand-by',
      'none',
    ]);
    expect(plan(view(2, [LONG], told(LONG, 'lean', 1)), 'stand').hold).toBe(true);
    expect(inBrief(plan(view(2, [LONG], told(LONG, 'go', 1)), 'bed-chair'))).toEqual([
      'go',
      'stand-by',
      'none',
    ]);
    expect(plan(view(2, [LONG], told(LONG, 'step', 1)), 'walk').hold).toBe(true);
  });
  it('a stage without meaning keeps the person there all the same, and takes back what lies beyond', () => {
    const rolls = told(LONG, 'roll', 3, failed(LONG, 'roll', 'rolls-to', 'left'));
    const { tier } = view(4, [LONG], told(LONG, 'go', 1), rolls);
    expect(tier.word).toBe('Lying');
    expect(tier.because.map((b) => b.words)).toContain('Rolls not met: The part rolls-to (left)');
    // Cleared again it counts no further than what was tested since.
    expect(view(6, [LONG], told(LONG, 'go', 1), rolls, told(LONG, 'side', 5)).tier.word).toBe('At the side');
  });
  it('its sided parts tell one leg from the other, its arms and its grip', () => {
    const oneLeg: Says = {
      rise: {
        oneLeg: 'left',
        findings: findingsMet(LONG.stages[5]!).map((f) =>
          f.side === 'right' ? { ...f, result: 'not-applicable', reason: 'cast' } : f,
        ),
      },
    };
    expect(view(2, [LONG], told(LONG, 'rise', 1, oneLeg)).tier).toMatchObject({
      word: 'On the feet',
      oneLeg: 'left',
    });
    expect(plan(view(2, [LONG], told(LONG, 'rise', 1, oneLeg)), 'bed-chair').towards).toBe('left');
    // Beyond it, also into a stage without meaning, only a therapist goes on.
    expect(view(2, [LONG], told(LONG, 'go', 1, oneLeg)).tier.word).toBe('On the feet');
    expect(view(2, [LONG], told(LONG, 'stairs', 1, oneLeg, 'therapist')).tier.word).toBe('Stairs');
    const noArms = { ...oneLeg, 'sit-up': failed(LONG, 'sit-up', 'elbow-straight', 'left')['sit-up']! };
    const kept = { ...noArms, 'sit-up': { ...noArms['sit-up'], outcome: 'met' as const } };
    expect(view(2, [LONG], told(LONG, 'rise', 1, kept)).tier.word).toBe('Leans');
  });
  it('how its stages may be held goes into the plan', () => {
    const held = told(LONG, 'rise', 1, { rise: { how: 'secured', securedWith: 'standing-aid', people: 2 } });
    const v = view(2, [LONG], held);
    expect(v.tier).toMatchObject({ word: 'On the feet', secured: true });
    expect(inBrief(plan(v, 'stand'))).toEqual(['go', 'two', 'standing-aid']);
  });
  it('after a check under another protocol only what was cleared under both counts', () => {
    const before: Told = {
      type: 'assessment-recorded',
      at: 1,
      payload: { ...checkUnder(DEFAULT_PROTOCOL, 'walk', hours(1)) },
    };
    expect(view(2, [], before).tier.word).toBe('Walk');
    const looked = view(4, [LONG], before, told(LONG, 'look', 3));
    expect(looked.tier).toMatchObject({ word: 'Lying', protocol: { id: 'long' } });
    expect(plan(looked, 'stand').hold).toBe(true);
    const rolled = view(4, [LONG], before, told(LONG, 'roll', 3));
    expect(rolled.tier.word).toBe('At the side');
  });
});

const strip = (tasks: readonly TaskPlan[]) =>
  tasks.map(({ because, ...rest }) => ({
    ...rest,
    because: because.map(({ rule, facts }) => ({ rule, facts })),
  }));
const essence = ({
  plan: p,
  trust,
  due,
  holds,
  onOwn,
  firstTimeUpPending,
  tier,
  nextCheck,
  today,
}: StayView) =>
  canonical({
    plan: p && { day: strip(p.day), night: strip(p.night) },
    trust: { ...trust, because: [], conflicts: trust.conflicts.map(({ safer, other }) => [safer, other]) },
    due: [due.state, due.at],
    holds,
    onOwn,
    firstTimeUpPending,
    tier: [tier.notch, tier.oneLeg, tier.secured, tier.at, tier.by],
    next: nextCheck && [nextCheck.depth, nextCheck.because.map((b) => [b.rule, b.facts])],
    goal: today.goal,
  });

describe('the words and ids of a protocol', { timeout: patience }, () => {
  const named = (one: Told): Told => {
    if (one.type === 'assessment-recorded') return { ...one, payload: renamed(one.payload as never) };
    const payload = one.payload as { type?: string; replacement?: object };
    return one.type === 'correction-made' && payload.type === 'assessment-recorded'
      ? { ...one, payload: { ...payload, replacement: renamed(payload.replacement as never) } }
      : one;
  };
  const other = wardWith(RENAMED);
  const placeOf = (id: string | undefined) => DEFAULT_PROTOCOL.stages.findIndex((s) => s.id === id);
  const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));

  it('CHECK-3 decide nothing: with every one of them changed, in the document and the records, each plan is the same', () => {
    expect(checkProtocol(RENAMED)).toEqual({ ok: RENAMED });
    fc.assert(
      fc.property(histories, at, (all, t) => {
        const one = evaluateStay(recordOf(all), plainWard, calendar, t).view;
        const two = evaluateStay(recordOf(all.map(named)), other, calendar, t).view;
        expect(essence(two)).toBe(essence(one));
        expect(two.nextCheck?.from).toBe(RENAMED.stages[placeOf(one.nextCheck?.from)]?.id);
      }),
      runs(100),
    );
  });

  it.each<[string, ReturnType<typeof upTo>]>([
    ['clear', upTo('clear')],
    ['upright', upTo('upright')],
    ['edge', upTo('edge')],
    ['stand', upTo('stand')],
    ['turn', upTo('turn')],
    ['walk', upTo('walk')],
    ['stand not met', upTo('stand', { stand: notMet('rises') })],
  ])('the tier is no ground for an aid: at %s the plan is the same under any word and notch', (_, stages) => {
    const input = planInput([assessment(stages)]);
    for (const [word, notch] of [
      ['Walk', 1],
      ['Supported', 0],
      ['Anything', 0.5],
      [null, null],
    ] as const) {
      expect(planStay({ ...input, tier: { ...input.tier, word, notch } })).toEqual(planStay(input));
    }
    // The one word that counts is the one that says nobody looked.
    expect(dayPlan({ ...input, tier: { ...input.tier, word: NOT_KNOWN } }, 'walk').hold).toBe(true);
  });
  it('what the tier gives as its ground exists', () => {
    const because = view(2, [LONG], { ...told(LONG, 'rise', 1), id: 'c1' }).tier.because;
    expect(because.map((b) => b.facts)).toEqual([['c1'], ['c1']]);
  });
});
