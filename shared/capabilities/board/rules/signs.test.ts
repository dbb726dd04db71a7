/** Signs of decline and of readiness: design and the users' research, 4b and 4c. Common practice, no source. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  confirm,
  hold,
  hours,
  notDone,
  order,
  recordOf,
  session,
  stayOf,
  ward,
  type Told,
} from './history.testkit.ts';
import { histories } from './random-history.testkit.ts';
import { did, fails, usual } from './signs.testkit.ts';

const look = (h: number, ...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(h));
const signs = (h: number, ...told: readonly Told[]) => look(h, ...told).view.signs;
const sign = (kind: string, h: number, ...told: readonly Told[]) =>
  signs(h, ...told).find((s) => s.kind === kind);
const rulesWith = (change: (rules: typeof DEFAULT_RULES) => void) => {
  const rules = structuredClone(DEFAULT_RULES);
  change(rules);
  return { ...ward, rules };
};

describe('stages lost', () => {
  const lost = (h: number, ...told: readonly Told[]) => sign('stages-lost', h, ...told);
  const walked = { ...check('walk', 1), id: 'walked' };

  it('SIGN-1 two within 24 h are told, with the two checks', () => {
    const now = lost(10, walked, fails('turn', 9, { id: 'fell' }))!;
    expect(now.words).toBe('2 stages less within 24 h: Walk 24 Oct 19:00, Stand 25 Oct 02:00 (UTC+01:00)');
    expect(now.because).toEqual([
      {
        rule: 'signs/stages-lost',
        facts: ['walked', 'fell'],
        words: 'Walk 24 Oct 19:00, then Stand 25 Oct 02:00 (UTC+01:00)',
      },
    ]);
  });
  it('one is not, three are', () => {
    expect(lost(10, walked, fails('walk', 9))).toBeUndefined();
    expect(lost(10, walked, fails('stand', 9))?.words).toMatch(/^3 stages less/);
    expect(lost(10, walked, fails('clear', 9))?.words).toMatch(/^5 stages less.*Supported/);
  });
  it('the checks lie at most 24 h apart', () => {
    expect(lost(25.5, walked, fails('turn', 25))).toBeDefined();
    expect(lost(25.5, walked, fails('turn', 25.01))).toBeUndefined();
  });
  it("a nurse's confirmation is a look as well", () => {
    const kept = { ...confirm(20, 'walked'), id: 'confirmed' };
    expect(lost(31, walked, kept, fails('turn', 30, { id: 'fell' }))?.because[0]?.facts).toEqual([
      'confirmed',
      'fell',
    ]);
    expect(lost(31, walked, { ...kept, role: 'aide' }, fails('turn', 30))).toBeUndefined();
    expect(lost(31, { ...kept, at: 0.5 }, walked, fails('turn', 30))).toBeUndefined();
  });
  it('is told for 24 h from the later check, and names that end', () => {
    const told = [walked, fails('turn', 9)];
    expect(lost(32.9, ...told)).toBeDefined();
    expect(lost(33, ...told)).toBeUndefined();
    expect(look(32.9, ...told).nextChange).toBe(hours(33));
  });
  it('ends when the stages come back, all but one', () => {
    expect(lost(12, walked, fails('turn', 9), check('turn', 11))).toBeUndefined();
    expect(lost(12, check('turn', 1), fails('stand', 9), check('stand', 11))).toBeUndefined();
    expect(lost(12, walked, fails('stand', 9), check('stand', 11))?.words).toMatch(/^3 stages less/);
  });
  it('stays when a later check finds the same', () => {
    expect(lost(27, walked, fails('turn', 9), check('stand', 26))?.because[0]?.facts[0]).toBe('walked');
  });
  it('tells the greatest loss, from the last look before it', () => {
    const again = { ...check('walk', 5), id: 'again' };
    const now = lost(13, walked, again, fails('turn', 9), fails('stand', 12, { id: 'fell' }));
    expect(now?.because[0]?.facts).toEqual(['again', 'fell']);
    expect(now?.words).toMatch(/^3 stages less/);
  });
  it('counts only checks by people who may clear a stage', () => {
    expect(lost(10, walked, fails('turn', 9, { role: 'aide' }))).toBeUndefined();
    expect(lost(10, { ...walked, role: 'aide' }, fails('turn', 9))).toBeUndefined();
  });
  it('does not compare checks under two protocols', () => {
    const own = { ...DEFAULT_PROTOCOL, id: 'own', version: 1 };
    const published = { ...ward, protocols: [{ id: 'own', version: 1, document: own }] };
    const under = (one: Told): Told => ({
      ...one,
      payload: { ...(one.payload as object), protocol: { id: 'own', version: 1 } },
    });
    const kinds = (...told: readonly Told[]) =>
      evaluateStay(stayOf(...told), published, calendar, hours(10)).view.signs.map((s) => s.kind);
    expect(kinds(walked, under(fails('turn', 9)))).not.toContain('stages-lost');
    expect(kinds(under(walked), under(fails('turn', 9)))).toContain('stages-lost');
  });
  it("goes by the ward's own limits", () => {
    const own = rulesWith((rules) => {
      rules.signs.stagesLost.value = 1;
      rules.signs.stagesLostHours.value = 6;
    });
    const kinds = (h: number, ...told: readonly Told[]) =>
      evaluateStay(stayOf(...told), own, calendar, hours(h)).view.signs.map((s) => s.kind);
    expect(kinds(8, walked, fails('walk', 7))).toContain('stages-lost');
    expect(kinds(8, walked, fails('walk', 7.1))).not.toContain('stages-lost');
  });
});

describe('refusals', () => {
  const no = (at: number, example?: string): Told => ({
    ...session(at, {
      outcome: 'not-done',
      activities: [],
      notDone: { group: 'said-no', ...(example === undefined ? {} : { example }) },
    }),
    id: `no-${at}`,
  });
  const refused = (...told: readonly Told[]) => sign('refusals', 20, ...told);

  it('SIGN-2 three in a row are told to nurse and therapist, with the reasons given', () => {
    expect(refused(no(15), no(16))).toBeUndefined();
    const now = refused(no(15, 'pain'), no(16, 'wants-family'), no(17, 'pain'))!;
    expect(now.words).toBe('Said no 3 times in a row: a nurse or therapist asks what stands in the way');
    expect(now.because).toEqual([
      {
        rule: 'signs/refusals',
        facts: ['no-15', 'no-16', 'no-17'],
        words: 'The last 3 offers were declined; reasons given: pain, wants family',
      },
    ]);
    expect(now.words).not.toMatch(/aide/i);
    expect(refused(no(15), no(16), no(17))?.because[0]?.words).toMatch(/; no reason given$/);
  });
  it('all of a longer row are counted', () => {
    expect(refused(no(14), no(15), no(16), no(17))?.words).toMatch(/^Said no 4 times/);
  });
  it('whatever was done in between breaks the row', () => {
    for (const outcome of ['done', 'part', 'stopped']) {
      expect(refused(no(14), no(15), did(15.5, 'edge-sit', { outcome }), no(16))).toBeUndefined();
    }
    expect(refused(did(13, 'walk'), no(14), no(15), no(16))).toBeDefined();
    expect(refused(no(14), no(15), no(16), did(17, 'walk'))).toBeUndefined();
  });
  it('what was not offered neither counts nor breaks', () => {
    for (const group of [
      'clinically-held',
      'not-here',
      'bad-moment',
      'no-people',
      'no-kit',
      'infection-steps',
    ]) {
      expect(refused(no(14), no(15), notDone(15.5, group))).toBeUndefined();
      expect(refused(no(14), no(15), notDone(15.5, group), no(16))).toBeDefined();
    }
  });
  it("goes by when they were offered, and by the ward's own number", () => {
    const lateTold = { ...did(17, 'walk'), payload: did(13, 'walk').payload };
    expect(refused(no(14), no(15), no(16), lateTold)).toBeDefined();
    const own = rulesWith((rules) => {
      rules.signs.refusalsInRow.value = 2;
    });
    const kinds = evaluateStay(stayOf(no(15), no(16)), own, calendar, hours(20)).view.signs.map(
      (s) => s.kind,
    );
    expect(kinds).toEqual(['refusals']);
  });
  it("is told under a clinician's plan too, and nothing else; nothing under a comfort plan", () => {
    const told = [check('walk', 1), fails('stand', 9), no(15), no(16), no(17)];
    expect(signs(20, ...told).map((s) => s.kind)).toEqual(['stages-lost', 'refusals']);
    const fence = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } };
    expect(signs(20, ...told, { type: 'scope-set', at: 18, payload: fence }).map((s) => s.kind)).toEqual([
      'refusals',
    ]);
    expect(signs(20, ...told, { type: 'scope-set', at: 18, payload: { scope: 'comfort' } })).toEqual([]);
  });
});

describe('below the usual way of moving', () => {
  /** Whole ward days begin 14, 38, 62, 86 and 110 h after START. */
  const below = (h: number, ...told: readonly Told[]) => sign('below-baseline', h, ...told);
  const three = [did(20, 'stand'), did(44, 'edge-sit'), did(68, 'chair')];

  it("SIGN-3 on three whole ward days in a row is told, with the usual way and each day's best", () => {
    expect(below(85.9, usual('walks'), ...three)).toBeUndefined();
    expect(look(85.9, usual('walks'), ...three).nextChange).toBeLessThanOrEqual(hours(86));
    const now = below(86, usual('walks'), ...three)!;
    expect(now.words).toBe(
      'Below the usual way of moving (walks, transfers alone) on 3 ward days in a row; most seen: chair',
    );
    expect(now.because).toEqual([
      {
        rule: 'signs/below-baseline',
        facts: ['usual', 's-20', 's-44', 's-68'],
        words: 'The most that was seen or done on each of those days, against the usual way of moving',
      },
    ]);
  });
  it('counts the best of each day, of sessions and of checks', () => {
    const more = [did(21, 'bed-exercise'), { ...check('stand', 45), id: 'checked' }];
    expect(below(86, usual('walks'), ...three, ...more)?.because[0]?.facts).toEqual([
      'usual',
      's-20',
      'checked',
      's-68',
    ]);
    expect(below(86, usual('walks'), ...three, check('walk', 45))).toBeUndefined();
    expect(below(86, usual('walks'), ...three, { ...check('walk', 45), role: 'aide' })).toBeDefined();
    expect(below(86, usual('walks'), ...three, did(45, 'walk', { outcome: 'part' }))).toBeUndefined();
    expect(below(86, usual('walks'), ...three, did(45, 'stairs'))).toBeUndefined();
  });
  it.each([
    ['upright', 'back raised'],
    ['edge', 'edge sit'],
    ['stand', 'stand'],
    ['turn', 'chair'],
  ] as const)('a check that cleared %s shows: %s', (stage, words) => {
    const told = [20, 44, 68].map((at) => check(stage, at));
    expect(below(86, usual('walks'), ...told)?.words).toMatch(new RegExp(`most seen: ${words}$`));
  });
  it('a check that cleared nothing of it was seen too: in bed', () => {
    const told = [20, 44, 68].map((at) => fails('clear', at));
    expect(below(86, usual('walks'), ...told)?.words).toMatch(/most seen: bed exercise$/);
  });
  it('a day with nothing seen counts nothing and breaks nothing, and is said', () => {
    const gap = [did(20, 'stand'), notDone(44, 'said-no'), did(68, 'chair'), did(92, 'stand')];
    expect(below(109.9, usual('walks'), ...gap)).toBeUndefined();
    expect(below(110, usual('walks'), ...gap)?.words).toBe(
      'Below the usual way of moving (walks, transfers alone) on 3 ward days in a row ' +
        '(1 day not recorded, not counted); most seen: chair',
    );
    const two = below(134, usual('walks'), did(20, 'stand'), did(92, 'chair'), did(116, 'stand'));
    expect(two?.words).toMatch(/\(2 days not recorded, not counted\)/);
    const latest = below(110, usual('walks'), ...three);
    expect(latest?.words).toMatch(/\(1 day not recorded, not counted\)/);
  });
  it('does not count days after the last one below, before which nothing was seen', () => {
    const late = [did(44, 'stand'), did(68, 'chair'), did(92, 'stand')];
    expect(below(110, usual('walks'), ...late)?.words).not.toMatch(/not recorded/);
  });
  it('a day that reached it breaks the row; today too, but today below does not count', () => {
    const told = [...three, did(92, 'walk')];
    expect(below(111, usual('walks'), ...told)).toBeUndefined();
    expect(below(93, usual('walks'), ...told)).toBeUndefined();
    expect(below(91, usual('walks'), ...three)).toBeDefined();
    expect(below(85, usual('walks'), ...three, did(84, 'stand'))).toBeUndefined();
  });
  it('leaves out the day of arrival, which is not whole', () => {
    const early = [did(2, 'stand'), did(20, 'stand'), did(44, 'stand')];
    expect(below(62, usual('walks'), ...early)).toBeUndefined();
    const fromSeven = [{ ...begun(), at: 14 }, { ...usual('walks'), at: 14.5 }, ...three];
    const kinds = (all: readonly Told[]) =>
      evaluateStay(recordOf(all), ward, calendar, hours(86)).view.signs.map((s) => s.kind);
    expect(kinds(fromSeven)).toContain('below-baseline');
    expect(kinds([{ ...begun(), at: 14.1 }, ...fromSeven.slice(1)])).not.toContain('below-baseline');
  });
  it.each([
    ['frame', 'alone', 'chair', 'walk'],
    ['wheelchair', 'alone', 'stand', 'chair'],
    ['wheelchair', 'helped', 'edge-sit', 'toilet'],
    ['wheelchair', 'lifted', 'back-raised', 'lifted-to-chair'],
    ['walks', 'lifted', 'back-raised', 'lifted-to-chair'],
  ])('usual way %s, transfers %s: %s is below it, %s is not', (moves, transfers, less, as) => {
    const days = (activity: string, extra: object = {}) => [20, 44, 68].map((at) => did(at, activity, extra));
    expect(below(86, usual(moves, transfers), ...days(less))).toBeDefined();
    expect(below(86, usual(moves, transfers), ...days(as))).toBeUndefined();
  });
  it("being lifted is below a transfer on one's own feet", () => {
    const help = { people: 2, aid: 'sling-lift' };
    const lifted = [20, 44, 68].map((at) => did(at, 'toilet', { help }));
    expect(below(86, usual('wheelchair'), ...lifted)?.words).toMatch(/most seen: lifted to chair$/);
    expect(below(86, usual('wheelchair', 'lifted'), ...lifted)).toBeUndefined();
  });
  it('is not told of someone who lived in bed, or whose usual way is not known', () => {
    const days = [20, 44, 68].map((at) => did(at, 'bed-exercise'));
    expect(below(86, usual('bed'), ...days)).toBeUndefined();
    expect(below(86, ...days)).toBeUndefined();
  });
  it("goes by the ward's own number of days", () => {
    const own = rulesWith((rules) => {
      rules.signs.daysBelowBaseline.value = 2;
    });
    const kinds = evaluateStay(
      stayOf(usual('walks'), did(20, 'stand'), did(44, 'stand')),
      own,
      calendar,
      hours(62),
    );
    expect(kinds.view.signs.map((s) => s.kind)).toEqual(['below-baseline']);
  });
});

describe('ready for the next stage', () => {
  const ready = (...told: readonly Told[]) => sign('ready', 24, ...told);
  const turned = { ...check('turn', 14.5), id: 'turned' };

  it('SIGN-4 after two easy sessions in a row at the stage cleared, with what it stands on', () => {
    expect(ready(turned, did(15, 'chair'))).toBeUndefined();
    const now = ready(turned, did(15, 'chair'), did(16, 'toilet'))!;
    expect(now.words).toBe('2 easy sessions in a row at Turn: ready to check the next stage, Walk');
    expect(now.because).toEqual([
      {
        rule: 'signs/ready',
        facts: ['turned', 's-15', 's-16'],
        words:
          'Done with effort 4 of 10 or less and nothing wrong, since Turn was cleared; a check decides, not this line',
      },
    ]);
  });
  it.each([
    ['clear', 'back-raised', 'Supported: ready to check the next stage, Upright'],
    ['upright', 'back-raised', 'Upright: ready to check the next stage, Edge'],
    ['edge', 'edge-sit', 'Edge: ready to check the next stage, Stand'],
    ['stand', 'stand', 'Stand: ready to check the next stage, Turn'],
  ] as const)('at %s by %s', (stage, activity, words) => {
    expect(ready(check(stage, 14.5), did(15, activity), did(16, activity))?.words).toBe(
      `2 easy sessions in a row at ${words}`,
    );
  });
  it('not with everything cleared, nothing cleared, or before the first check', () => {
    const easy = [did(15, 'walk'), did(16, 'walk')];
    expect(ready(check('walk', 14.5), ...easy)).toBeUndefined();
    expect(ready(fails('clear', 14.5), ...easy)).toBeUndefined();
    expect(ready(...easy)).toBeUndefined();
  });
  it('effort up to the limit, not beyond, and none that nobody wrote down', () => {
    const at = (effort: number | undefined) => [did(15, 'chair', { effort }), did(16, 'chair', { effort })];
    expect(ready(turned, ...at(4))).toBeDefined();
    expect(ready(turned, ...at(5))).toBeUndefined();
    expect(ready(turned, ...at(undefined))).toBeUndefined();
  });
  it('in a row: events, half done, a hard one and a refusal break it; the rest neither counts nor breaks', () => {
    const between = (one: Told) => ready(turned, did(15, 'chair'), one, did(17, 'chair'));
    for (const extra of [{ events: ['pain'] }, { outcome: 'part' }, { outcome: 'stopped' }, { effort: 6 }]) {
      expect(between(did(16, 'chair', extra))).toBeUndefined();
    }
    expect(between(notDone(16, 'said-no'))).toBeUndefined();
    expect(between(notDone(16, 'no-people'))).toBeDefined();
    expect(between(did(16, 'edge-sit'))?.because[0]?.facts).not.toContain('s-16');
    expect(between(did(16, 'chair', { effort: undefined }))).toBeDefined();
  });
  it('only sessions since the stage was cleared, and since the next was last not met', () => {
    const easy = [did(15, 'chair'), did(16, 'chair')];
    expect(ready(...easy, check('turn', 17))).toBeUndefined();
    expect(ready(...easy, check('turn', 15))).toBeUndefined();
    expect(ready(turned, ...easy, fails('walk', 17))).toBeUndefined();
    expect(ready(turned, ...easy, fails('walk', 17), did(18, 'chair'), did(19, 'chair'))).toBeDefined();
  });
  it('not where a hold, an order or the usual way stops the next stage', () => {
    const easy = [turned, did(15, 'chair'), did(16, 'chair')];
    expect(ready(...easy, hold(17, 'walking', 40))).toBeUndefined();
    expect(ready(...easy, order(17, { about: 'activity', most: 'chair' }))).toBeUndefined();
    expect(ready(order(13, { about: 'activity', most: 'walk' }), ...easy)).toBeDefined();
    expect(ready(usual('wheelchair'), ...easy)).toBeUndefined();
    expect(ready(usual('frame'), ...easy)).toBeDefined();
  });
  it('on one leg it is a therapist who may check', () => {
    const stand = check('stand', 14.5);
    const payload = structuredClone(stand.payload) as {
      stages: {
        stage: string;
        oneLeg?: string;
        findings: { part: string; side?: string; result: string }[];
      }[];
    };
    const stood = payload.stages.find((one) => one.stage === 'stand')!;
    stood.oneLeg = 'right';
    stood.findings.find((f) => f.part === 'leg-bears' && f.side === 'left')!.result = 'not-met';
    const said = ready({ ...stand, payload }, did(15, 'stand'), did(16, 'stand'))?.words;
    expect(said).toBe('2 easy sessions in a row at Stand: a therapist may check the next stage, Turn');
  });
  it("goes by the ward's own number of sessions", () => {
    const own = rulesWith((rules) => {
      rules.signs.readySessions.value = 3;
    });
    const kinds = (...told: readonly Told[]) =>
      evaluateStay(stayOf(...told), own, calendar, hours(24)).view.signs.map((s) => s.kind);
    expect(kinds(turned, did(15, 'chair'), did(16, 'chair'))).toEqual([]);
    expect(kinds(turned, did(15, 'chair'), did(16, 'chair'), did(17, 'chair'))).toEqual(['ready']);
  });
});

describe('every sign, over random histories', { timeout: patience }, () => {
  it('SIGN-5 names facts that exist, and never speaks like an alarm', () => {
    const at = fc.integer({ min: 0, max: 480 }).map((q) => hours(q / 4));
    fc.assert(
      fc.property(histories, at, (told, t) => {
        const record = recordOf(told);
        const known = new Set<string>(record.events.map((e) => e.id));
        for (const one of evaluateStay(record, ward, calendar, t).view.signs) {
          for (const { facts } of one.because) {
            expect(facts.length).toBeGreaterThan(0);
            expect(facts.filter((f) => !known.has(f))).toEqual([]);
          }
          expect(one.words).not.toMatch(/alarm|alert|urgent|danger|critical|warning|!/i);
        }
      }),
      runs(150),
    );
  });
});
