/** Stages, part by part and side by side. Order of stages and gates: common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Finding, Reading, Side } from '../values.ts';
import {
  allMet,
  assessment,
  fact,
  hours,
  notMet,
  tierInput,
  upTo,
  type StageSays,
} from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));
const word = (...facts: Fact[]) => judge(...facts).view.word;
const says = (...facts: Fact[]) => judge(...facts).view.because.map((b) => `${b.rule}: ${b.words}`);

const swapped = (stage: string, ...changes: Finding[]): Finding[] =>
  allMet(stage).map((f) => changes.find((c) => c.part === f.part && c.side === f.side) ?? f);
const of = (part: string, result: Finding['result'], side?: Side): Finding => ({
  part,
  result,
  ...(side ? { side } : {}),
  ...(result === 'not-tested' ? { reason: 'refused' as const } : {}),
  ...(result === 'not-applicable' ? { reason: 'limb-absent' as const } : {}),
});
const edgeWith = (...changes: Finding[]) => ({ edge: { findings: swapped('edge', ...changes) } });

describe('a part decides its stage', () => {
  it.each<[string, Finding[], string]>([
    ['a required part not met', [of('sits-hands-free', 'not-met')], 'Upright'],
    ['a required part not tested', [of('sits-hands-free', 'not-tested')], 'Upright'],
    ['a required part that does not apply', [of('sits-hands-free', 'not-applicable')], 'Edge'],
    ['one side of a required part not met', [of('looks-behind', 'not-met', 'right')], 'Upright'],
    ['one side of a required part not tested', [of('looks-behind', 'not-tested', 'left')], 'Upright'],
    ['one side that does not apply', [of('picks-up-cloth', 'not-applicable', 'left')], 'Edge'],
  ])('%s', (_, changes, expected) => {
    expect(word(assessment(upTo('edge', edgeWith(...changes))))).toBe(expected);
  });
  it('a part not met lowers what was cleared before, a part not tested does not', () => {
    const before = assessment(upTo('edge'), { at: 0 });
    const later = (part: Finding) => assessment(upTo('edge', edgeWith(part)), { at: 3 });
    expect(word(before, later(of('sits-hands-free', 'not-met')))).toBe('Upright');
    expect(word(before, later(of('sits-hands-free', 'not-tested')))).toBe('Edge');
    expect(says(before, later(of('looks-behind', 'not-met', 'left'))).join()).toContain(
      'Edge not met: Looks behind over the shoulder (left)',
    );
  });
  it.each<[string, Finding[], string]>([
    [
      'both sides not met',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-met', 'right')],
      'Supported',
    ],
    ['one met, one not', [of('heel-held', 'not-met', 'left')], 'Upright'],
    ['one met, one not tested', [of('heel-held', 'not-tested', 'left')], 'Upright'],
    [
      'one not met, one not tested',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-tested', 'right')],
      'Supported',
    ],
    [
      'one not met, one absent',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-applicable', 'right')],
      'Supported',
    ],
    [
      'both absent',
      [of('heel-held', 'not-applicable', 'left'), of('heel-held', 'not-applicable', 'right')],
      'Upright',
    ],
  ])('where one side is enough: %s', (_, changes, expected) => {
    expect(word(assessment(upTo('upright', { upright: { findings: swapped('upright', ...changes) } })))).toBe(
      expected,
    );
  });
  it('a part that only informs keeps nobody back', () => {
    const none = (['left', 'right'] as const).flatMap((side) =>
      ['grip', 'arm-pushes', 'sole-pushes'].map((part) => of(part, 'not-met', side)),
    );
    expect(word(assessment(upTo('edge', { upright: { findings: swapped('upright', ...none) } })))).toBe(
      'Edge',
    );
  });
  it.each(['edge', 'stand', 'turn', 'walk'])('a symptom during %s means it is not cleared', (stage) => {
    const order = ['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk'];
    const before = order[order.findIndex((w) => w.toLowerCase() === stage) - 1];
    const check = assessment(upTo(stage, { [stage]: { symptom: true } }));
    expect(word(check)).toBe(before);
    expect(says(check).join()).toContain('a symptom during it');
  });
});

describe('held safe', () => {
  const held = (people: number, more: StageSays = {}): Record<string, StageSays> => ({
    stand: { how: 'secured', securedWith: 'standing-aid', people, ...more },
  });
  const standing = (...facts: Fact[]) => judge(...facts).seen.stages.get('stand');
  it('what held is not forgotten by failing, and the most people of the two stay', () => {
    const before = assessment(upTo('stand', held(2)), { at: 0 });
    const failed = assessment(upTo('stand', { stand: { ...notMet('rises'), people: 1 } }), { at: 3 });
    expect(standing(before, failed)).toMatchObject({
      outcome: 'not-met',
      securedWith: 'standing-aid',
      people: 2,
    });
    const more = assessment(upTo('stand', { stand: { ...notMet('rises'), people: 3 } }), { at: 3 });
    expect(standing(before, more)).toMatchObject({ people: 3 });
  });
  it('of two checks of one time that cleared it, what held more stands', () => {
    const sling = assessment(upTo('stand', { stand: { how: 'secured', securedWith: 'sling', people: 1 } }), {
      at: 1,
    });
    const aid = assessment(upTo('stand', held(2)), { at: 1 });
    expect(standing(aid, sling)).toMatchObject({ outcome: 'met', securedWith: 'sling', people: 2 });
    expect(standing(sling, aid)).toMatchObject({ outcome: 'met', securedWith: 'sling', people: 2 });
  });
});

// Design section 1, "tier": one leg meets, both arms push, the order allows (common practice, no source).
describe('a stage held safe and then not met', () => {
  it.each<[StageSays['securedWith'], StageSays['securedWith'], string]>([
    ['sling', 'standing-aid', 'sling'],
    ['standing-aid', 'sling', 'sling'],
    ['standing-aid', 'two-people', 'standing-aid'],
    ['sling', undefined, 'sling'],
  ])('cleared in the %s and failed in the %s keeps what held more (%s)', (first, then, keeps) => {
    const how = (securedWith: StageSays['securedWith']): StageSays =>
      securedWith ? { how: 'secured', securedWith } : { how: 'free' };
    const { seen } = judge(
      assessment(upTo('stand', { stand: { ...how(first), people: 2 } }), { at: 0 }),
      assessment(upTo('stand', { stand: { ...how(then), ...notMet('rises') } }), { at: 4 }),
    );
    expect(seen.stages.get('stand')).toMatchObject({ outcome: 'not-met', securedWith: keeps, people: 2 });
  });
});

describe('a stage cleared at the very time at which one before it, or it, was not met', () => {
  const turned = assessment(upTo('turn', { turn: { how: 'secured', securedWith: 'sling', people: 2 } }), {
    at: 0,
  });
  const standing = assessment(upTo('stand'), { at: 4 });
  const failed = (stage: string) => assessment(upTo(stage, { [stage]: notMet() }), { at: 0, role: 'aide' });
  it.each(['clear', 'turn'])(
    'keeps how the person was held, in whichever order the two are taken (%s)',
    (at) => {
      for (const both of [
        [turned, failed(at)],
        [failed(at), turned],
      ]) {
        const turn = judge(...both, standing).seen.stages.get('turn');
        expect(turn).toMatchObject({ securedWith: 'sling', people: 2 });
        expect(turn!.outcome).toBe(at === 'turn' ? 'not-met' : 'taken-back');
      }
    },
  );
});

it('a stage done free beyond one that was not met does not undo how it was held before', () => {
  const sling = assessment(upTo('turn', { turn: { how: 'secured', securedWith: 'sling', people: 2 } }), {
    at: 0,
  });
  const beyond = assessment(upTo('turn', { stand: notMet('rises') }), { at: 4 });
  expect(judge(sling, beyond).seen.stages.get('turn')).toMatchObject({
    outcome: 'taken-back',
    how: 'secured',
    securedWith: 'sling',
    people: 2,
  });
});

describe('the one-leg route', () => {
  const cast = (side: Side): StageSays => ({
    findings: swapped('stand', { part: 'leg-bears', side, result: 'not-applicable', reason: 'cast' }),
  });
  const arms = (...changes: Finding[]): StageSays => ({ findings: swapped('upright', ...changes) });
  const noArms: StageSays = { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') };
  const onLeft = { oneLeg: 'left' as const };

  it('opens when the other leg does not apply', () => {
    expect(judge(assessment(upTo('stand', { stand: cast('right') }))).view).toMatchObject({
      word: 'Stand',
      oneLeg: 'left',
    });
  });
  it('opens when the other leg was not met', () => {
    const findings = swapped('stand', of('leg-bears', 'not-met', 'right'));
    expect(judge(assessment(upTo('stand', { stand: { ...onLeft, findings } }))).view).toMatchObject({
      word: 'Stand',
      oneLeg: 'left',
    });
    expect(word(assessment(upTo('stand', { stand: { findings } })))).toBe('Edge');
  });
  it.each([
    ['declared', onLeft as StageSays],
    ['because of a cast', cast('right')],
  ])('needs both arms pushing, %s', (_, stand) => {
    const one = assessment(upTo('stand', { upright: arms(of('arm-pushes', 'not-met', 'right')), stand }));
    expect(word(one)).toBe('Edge');
    expect(says(one).join()).toContain('on one leg both arms must push, and they do not');
    const absent = arms(of('arm-pushes', 'not-applicable', 'right'));
    expect(word(assessment(upTo('stand', { upright: absent, stand })))).toBe('Edge');
  });
  it('counts arms seen to push at an earlier check, and no arms that nobody saw', () => {
    const stand = assessment(upTo('stand', { upright: noArms, stand: onLeft }), { at: 3 });
    expect(word(stand)).toBe('Edge');
    expect(word(assessment(upTo('upright'), { at: 1 }), stand)).toBe('Stand');
    const weak = arms(of('arm-pushes', 'not-met', 'left'));
    expect(word(assessment(upTo('upright', { upright: weak }), { at: 1 }), stand)).toBe('Edge');
  });
  it('takes no arm that an order keeps from pushing, in part or at all, until someone qualified lifts it', () => {
    const arm = (bears: string, at: number, role: Role = 'nurse', limb = 'right-arm') =>
      fact('order-changed', { order: { about: 'weight-bearing', limb, bears } }, { at, role });
    const stand = assessment(upTo('stand', { stand: onLeft }), { at: 3 });
    expect(word(arm('limited', 1), stand)).toBe('Edge');
    expect(word(arm('none', 1), stand)).toBe('Edge');
    expect(word(arm('none', 1, 'nurse', 'left-arm'), stand)).toBe('Edge');
    expect(word(arm('unrestricted', 1), stand)).toBe('Stand');
    expect(word(arm('none', 1), arm('unrestricted', 2), stand)).toBe('Stand');
    expect(word(arm('none', 1), arm('unrestricted', 2, 'aide'), stand)).toBe('Edge');
    expect(word(arm('none', 1), arm('unrestricted', 2, 'nurse', 'left-arm'), stand)).toBe('Edge');
    // On two legs the arms do not matter for the stage.
    expect(word(arm('none', 1), assessment(upTo('stand'), { at: 3 }))).toBe('Stand');
  });
  it('takes back what was cleared beyond it on two legs, until a therapist clears it on one', () => {
    const walked = assessment(upTo('walk'), { at: 0 });
    const oneLeg = assessment(upTo('stand', { stand: onLeft }), { at: 5 });
    expect(word(walked)).toBe('Walk');
    const j = judge(walked, oneLeg);
    expect(j.view).toMatchObject({ word: 'Stand', oneLeg: 'left' });
    expect(j.seen.stages.get('walk')).toMatchObject({
      outcome: 'taken-back',
      reasons: ['to be cleared again: Stand is on one leg since'],
    });
    const therapist = assessment(upTo('walk', { stand: onLeft }), { at: 8, role: 'therapist' });
    expect(word(walked, oneLeg, therapist)).toBe('Walk');
    // Said again by a nurse, still on that leg, it takes nothing back.
    expect(word(walked, therapist, assessment(upTo('stand', { stand: onLeft }), { at: 9 }))).toBe('Walk');
    const other = assessment(upTo('stand', { stand: { oneLeg: 'right' } }), { at: 9 });
    expect(word(walked, therapist, other)).toBe('Stand');
  });
  it.each([
    ['nurse first', 0, 1],
    ['nurse last', 1, 0],
  ])('of one time with a check on two legs the one leg stands (%s)', (_, one, two) => {
    const pair = [
      assessment(upTo('stand', { stand: onLeft }), { at: 5, id: `t${one}` }),
      assessment(upTo('walk'), { at: 5, id: `t${two}` }),
    ];
    expect(judge(...pair).view).toMatchObject({ word: 'Stand', oneLeg: 'left' });
  });
  it('is closed with no leg at all, and that is not met', () => {
    const none = swapped(
      'stand',
      of('leg-bears', 'not-applicable', 'left'),
      of('leg-bears', 'not-applicable', 'right'),
    );
    const check = assessment(upTo('stand', { stand: { findings: none } }), { at: 2 });
    expect(word(check)).toBe('Edge');
    expect(word(assessment(upTo('walk'), { at: 0 }), check)).toBe('Edge');
    expect(says(check).join()).toContain('there is no leg it applies to');
    const wrong = swapped('stand', of('leg-bears', 'not-applicable', 'left'));
    expect(word(assessment(upTo('stand', { stand: { ...onLeft, findings: wrong } })))).toBe('Edge');
  });
  it('a free rise counts as held unless the leg that bears pushes against resistance', () => {
    const push = (side: Side) => arms(of('sole-pushes', 'not-met', side));
    const free = (upright: StageSays, stand: StageSays) =>
      judge(assessment(upTo('stand', { upright, stand }))).clearedFree.has('stand');
    expect(free(push('right'), onLeft)).toBe(true);
    expect(free(push('left'), onLeft)).toBe(false);
    expect(free(push('left'), {})).toBe(true);
    expect(free(arms(of('sole-pushes', 'not-met', 'left'), of('sole-pushes', 'not-met', 'right')), {})).toBe(
      false,
    );
  });
});

describe('the pressures of a check, said with the tier', () => {
  const reading = (
    posture: 'lying' | 'standing',
    systolic: number,
    minute: number,
    heartRate = 70,
  ): Reading => ({
    kind: 'pressure',
    posture,
    systolic,
    diastolic: 70,
    heartRate,
    minute,
    at: new Date(hours(0) + (posture === 'lying' ? 0 : minute * 60_000)).toISOString(),
  });
  const set = (lying: number, one: number, three: number | null, rate = 70) => [
    reading('lying', lying, 5),
    reading('standing', one, 1, rate),
    ...(three === null ? [] : [reading('standing', three, 3)]),
  ];
  const check = (
    readings: Reading[],
    extra: { at?: number; role?: 'nurse' | 'aide'; symptoms?: 'dizzy'[]; gone?: boolean; id?: string } = {},
  ) =>
    assessment(
      upTo('stand'),
      { at: extra.at ?? 0, role: extra.role ?? 'nurse', id: extra.id ?? '' },
      {
        depth: 'full-with-pressure',
        readings,
        risingSymptoms: extra.symptoms ?? [],
        ...(extra.gone ? { protocol: { id: 'gone', version: 4 } } : {}),
      },
    );
  const of3 = (...facts: Fact[]) => judge(...facts).view.because.filter((b) => b.rule.startsWith('rising/'));

  it('a fall: which readings, and what follows', () => {
    const [said, ...rest] = of3(check(set(130, 108, 126), { id: 'c1' }));
    expect(rest).toEqual([]);
    expect(said).toMatchObject({ rule: 'rising/fell', facts: ['c1'] });
    expect(said?.words).toContain(
      'systolic fell 22: from 130/70 lying to 108/70 at 1 min standing (limit 20)',
    );
    expect(said?.words).toContain('sit for 2 min, then stand and measure once more');
    expect(said?.words).toContain('Tell the prescriber');
  });
  it('INCOMPLETE, with what is missing', () => {
    expect(of3(check(set(130, 125, null), { id: 'c1' }))).toEqual([
      {
        rule: 'rising/incomplete',
        facts: ['c1'],
        words: 'Pressure on rising INCOMPLETE: standing 3 min missing',
      },
    ]);
  });
  it('what is only shown: a heart-rate rise, a rise, a high lying pressure', () => {
    expect(of3(check(set(165, 188, 160, 104)))).toMatchObject([
      {
        rule: 'rising/shown',
        words: expect.stringMatching(/lying systolic is high \(165\).*heart rate rose 34.*systolic rose 23/),
      },
    ]);
    expect(of3(check(set(130, 128, 126)))).toEqual([]);
  });
  it('a drop stands until a later whole set by someone qualified shows none and clears standing', () => {
    const fell = check(set(130, 108, 126));
    const drop = (...facts: Fact[]) => judge(fell, ...facts).pressureDrop !== null;
    expect(drop()).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4 }))).toBe(false);
    expect(drop(check(set(130, 128, 126), { at: 0.01 }))).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4, role: 'aide' }))).toBe(true);
    expect(drop(check(set(130, 128, null), { at: 4 }))).toBe(true);
    expect(drop(check(set(130, 128, 126), { at: 4, symptoms: ['dizzy'] }))).toBe(true);
    expect(drop(check(set(105, 88, 95), { at: 4 }))).toBe(true);
    // The words stay with the check that fell.
    expect(of3(fell, check(set(130, 128, null), { at: 4 })).map((b) => b.rule)).toEqual([
      'rising/fell',
      'rising/incomplete',
    ]);
  });
  it('anyone may find a drop, and under a protocol that cannot be found it is one all the same', () => {
    expect(judge(check(set(130, 108, 126), { role: 'aide' })).pressureDrop).not.toBeNull();
    expect(judge(check(set(130, 108, 126), { gone: true })).pressureDrop).not.toBeNull();
    const fell = check(set(130, 108, 126));
    expect(judge(fell, check(set(130, 128, 126), { at: 4, gone: true })).pressureDrop).not.toBeNull();
  });
});
