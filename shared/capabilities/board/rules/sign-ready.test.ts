/**
 * Ready for the next stage: when that is told, and what a failed try of it takes back. Design and the
 * users' research, 4b and 4c. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { check, confirm, hold, notDone, order, trigger, type Told } from './history.testkit.ts';
import { did, fails, kindsAt, rulesWith, sign, signWithoutArrival, usual } from './signs.testkit.ts';

const ready = (...told: readonly Told[]) => sign('ready', 24, told);
const turned = { ...check('turn', 14.5), id: 'turned' };
const easy = [did(15, 'chair'), did(16, 'chair')];

describe('ready for the next stage', () => {
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
    const walked = [did(15, 'walk'), did(16, 'walk')];
    expect(ready(check('walk', 14.5), ...walked)).toBeUndefined();
    expect(ready(fails('clear', 14.5), ...walked)).toBeUndefined();
    expect(ready(...walked)).toBeUndefined();
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
    // A fault of the equipment says nothing of the person, but easy it was not.
    expect(between(did(16, 'chair', { events: ['equipment-fault'] }))).toBeUndefined();
    expect(between(notDone(16, 'said-no'))).toBeUndefined();
    expect(between(notDone(16, 'no-people'))).toBeDefined();
    expect(between(did(16, 'edge-sit'))?.because[0]?.facts).not.toContain('s-16');
    expect(between(did(16, 'chair', { effort: undefined }))).toBeDefined();
  });
  it('only sessions since the stage was cleared, and since the next was last not met', () => {
    expect(ready(...easy, check('turn', 17))).toBeUndefined();
    expect(ready(...easy, check('turn', 15))).toBeUndefined();
    expect(ready(turned, ...easy, fails('walk', 17))).toBeUndefined();
    expect(ready(turned, ...easy, fails('walk', 17), did(18, 'chair'), did(19, 'chair'))).toBeDefined();
  });
  it('only sessions since the last of several reasons to look again, also where a confirm answered it', () => {
    const asked = [trigger('asked-to-look-again', 14.6), confirm(14.7, 'turned')];
    const again = [trigger('board-wrong', 17), confirm(18, 'turned')];
    expect(ready(turned, ...asked, ...easy)).toBeDefined();
    expect(ready(turned, ...asked, ...easy, ...again)).toBeUndefined();
    expect(ready(turned, ...asked, ...easy, ...again, did(19, 'chair'), did(20, 'chair'))).toBeDefined();
  });
  it('also where nobody entered the arrival', () => {
    expect(signWithoutArrival('ready', 24, [turned, ...easy])).toBeDefined();
  });
  it('not where a hold, an order or the usual way stops the next stage', () => {
    const told = [turned, ...easy];
    expect(ready(...told, hold(17, 'walking', 40))).toBeUndefined();
    expect(ready(...told, order(17, { about: 'activity', most: 'chair' }))).toBeUndefined();
    expect(ready(order(13, { about: 'activity', most: 'walk' }), ...told)).toBeDefined();
    // Given before the check, which went as far as it lets somebody go.
    expect(ready(order(13, { about: 'activity', most: 'stand' }), ...told)).toBeUndefined();
    expect(ready(usual('wheelchair'), ...told)).toBeUndefined();
    expect(ready(usual('frame'), ...told)).toBeDefined();
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
    const kinds = (...told: readonly Told[]) => kindsAt(24, told, own);
    expect(kinds(turned, did(15, 'chair'), did(16, 'chair'))).toEqual([]);
    expect(kinds(turned, did(15, 'chair'), did(16, 'chair'), did(17, 'chair'))).toEqual(['ready']);
  });
});

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
