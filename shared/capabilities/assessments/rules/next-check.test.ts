/** The next check on whole histories. Depth and beginning: design, row "assessment" (common practice). */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  confirm,
  hours,
  recordOf,
  session,
  setUpWard,
  stayOf,
  trigger,
  ward,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { TriggerKind } from '../../orders/values.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';

const seen = (at: number, ...told: Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(at));
const next = (at: number, ...told: Told[]) => seen(at, ...told).view.nextCheck!;
const rules = (at: number, ...told: Told[]) => next(at, ...told).because.map((b) => b.rule);

/** A check with a whole pressure set; standing at `one` mmHg after 130 lying. */
const withSet = (
  last: Parameters<typeof check>[0],
  at: number,
  one = 126,
  says: Parameters<typeof check>[2] = {},
) => {
  const pressure = (posture: string, minute: number, systolic: number) => ({
    kind: 'pressure',
    posture,
    minute,
    systolic,
    diastolic: 76,
    at: toIso(hours(at + (posture === 'lying' ? 0 : minute / 60))),
  });
  return check(last, at, says, {
    depth: 'full-with-pressure',
    risingSymptoms: [],
    readings: [pressure('lying', 5, 130), pressure('standing', 1, one), pressure('standing', 3, 126)],
  });
};
const id = (told: Told, of: string): Told => ({ ...told, id: of });

describe('the next check', () => {
  it('the first of a stay is full with the pressure set, from the first stage', () => {
    expect(next(1)).toEqual({
      depth: 'full-with-pressure',
      from: 'clear',
      because: [
        {
          rule: 'next-check/first',
          facts: [expect.any(String)],
          words: 'The first check of the stay: with the pressure set',
        },
      ],
    });
    const arrived = stayOf().events[0]!.id;
    expect(next(1).because[0]?.facts).toEqual([arrived]);
    // A check by someone who may only make it safer is not yet a check.
    expect(next(2, { ...withSet('walk', 1), role: 'aide' }).depth).toBe('full-with-pressure');
  });

  it('with nothing changed and nothing open it is a confirm', () => {
    const said = next(2, id(withSet('walk', 1), 'c1'));
    expect(said).toMatchObject({ depth: 'confirm', from: 'walk' });
    expect(said.because).toEqual([
      {
        rule: 'next-check/nothing-changed',
        facts: ['c1'],
        words: 'Nothing changed and nothing open: a nurse watches one ordinary move',
      },
      {
        rule: 'next-check/from-last-cleared',
        facts: ['c1'],
        words: 'Begins at Walk: cleared with all before it, each less than 12 h ago',
      },
    ]);
  });

  it('after a part not met it goes on from the last stage cleared before it', () => {
    const stopped = id(check('stand', 1, { stand: { outcome: 'not-met' } }), 'c1');
    const said = next(2, stopped);
    expect(said).toMatchObject({ depth: 'full', from: 'edge' });
    expect(said.because[0]).toMatchObject({
      rule: 'next-check/stopped',
      facts: ['c1'],
      words: 'Stand not met at the last check',
    });
  });
  it('names a stage taken back as what is to be cleared again', () => {
    const said = next(6, withSet('walk', 1), check('turn', 5, { turn: { outcome: 'not-met' } }));
    expect(said).toMatchObject({ depth: 'full', from: 'stand' });
    expect(said.because[0]?.words).toBe('Turn not met at the last check');
  });
  it('a check that was not finished goes on, until a nurse has watched an ordinary move', () => {
    const part = id(check('edge', 1), 'c1');
    expect(next(2, part)).toMatchObject({ depth: 'full', from: 'edge' });
    expect(next(2, part).because[0]).toMatchObject({
      rule: 'next-check/not-finished',
      facts: ['c1'],
      words: 'Stand was not tested yet: the check goes on',
    });
    expect(next(4, part, id(confirm(3, 'c1'), 'ok'))).toMatchObject({
      depth: 'confirm',
      from: 'edge',
      because: [{ facts: ['ok'] }, {}],
    });
    expect(next(4, part, confirm(3, 'c1', 'aide')).depth).toBe('full');
  });
  it('begins at the first stage when no stage is cleared', () => {
    const said = next(2, id(check('clear', 1, { clear: { outcome: 'not-met' } }), 'c1'));
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
    expect(said.because.at(-1)).toMatchObject({
      rule: 'next-check/from-first',
      facts: ['c1'],
      words: 'No stage is cleared: begins at clear',
    });
  });

  it('begins again when what was cleared is 12 h old, to the minute, and names that instant', () => {
    const part = id(check('edge', 1), 'c1');
    const renewed = confirm(10, 'c1');
    const before = seen(13 - 1 / 60, part, renewed);
    expect(before.view.nextCheck).toMatchObject({ depth: 'confirm', from: 'edge' });
    expect(before.nextChange).toBe(hours(13));
    const after = next(13, part, renewed);
    expect(after).toMatchObject({ depth: 'confirm', from: 'clear' });
    expect(after.because.at(-1)).toMatchObject({
      rule: 'next-check/from-first',
      facts: ['c1'],
      words: 'What was cleared is 12 h old or more: begins again at clear',
    });
  });
  it('goes back only as far as what is too old', () => {
    // The confirm renews the plan: a check up to Upright alone does not, while Walk stands cleared.
    const said = next(14, id(withSet('walk', 1), 'c1'), id(check('upright', 8), 'c2'), confirm(9, 'c2'));
    expect(said).toMatchObject({ depth: 'confirm', from: 'upright' });
  });
  it('CHECK-4 when the validity ran out it is full, from the first stage', () => {
    const whole = id(withSet('walk', 1), 'c1');
    expect(next(13 - 1 / 60, whole).depth).toBe('confirm');
    const said = next(13, whole);
    expect(said).toMatchObject({ depth: 'full', from: 'clear' });
    expect(said.because.map((b) => b.rule)).toEqual(['next-check/ran-out', 'next-check/from-first']);
    expect(said.because[0]?.words).toContain('validity ran out');
    expect(said.because.map((b) => b.facts)).toEqual([['c1'], ['c1']]);
  });

  it.each<[TriggerKind, string]>([
    ['faint', 'full-with-pressure'],
    ['bleed', 'full-with-pressure'],
    ['transfusion', 'full-with-pressure'],
    ['new-symptom', 'full-with-pressure'],
    ['sedation', 'full-with-pressure'],
    ['return-from-surgery', 'full-with-pressure'],
    ['return-from-dialysis', 'full-with-pressure'],
    ['fall', 'full'],
    ['seizure', 'full'],
    ['low-glucose', 'full'],
    ['new-confusion', 'full'],
    ['block-on', 'full'],
    ['block-off', 'full'],
    ['order-change', 'full'],
    ['sheath-out', 'full'],
    ['suspected-clot', 'full'],
    ['failed-attempt', 'full'],
    ['step-down-from-intensive-care', 'full'],
    ['attachment-change', 'full'],
    ['asked-to-look-again', 'full'],
    ['board-wrong', 'full'],
  ])('CHECK-4 after %s it is %s, from the first stage', (kind, depth) => {
    const said = next(3, withSet('walk', 1), id(trigger(kind, 2), 'happened'));
    expect(said).toMatchObject({ depth, from: 'clear' });
    expect(said.because.find((b) => b.rule === 'next-check/trigger')?.facts).toEqual(['happened']);
    expect(said.because.some((b) => b.rule === 'next-check/with-pressure')).toBe(depth !== 'full');
  });
  it.each<[TriggerKind, boolean]>([
    ['attachment-change', true],
    ['asked-to-look-again', true],
    ['board-wrong', true],
    ['fall', false],
  ])('says after %s whether watching one ordinary move answers it: %s', (kind, answers) => {
    const words = next(3, withSet('walk', 1), trigger(kind, 2)).because.map((b) => b.words);
    expect(words.join().includes('watching one ordinary move answers it too')).toBe(answers);
  });
  it('after dizziness in a session it has the pressure set, after a near-fall alone it has not', () => {
    const whole = withSet('walk', 1);
    const dizzy = next(3, whole, session(2, { events: ['dizzy'] }));
    expect(dizzy).toMatchObject({ depth: 'full-with-pressure', from: 'clear' });
    expect(dizzy.because[0]?.words).toContain('dizzy');
    expect(next(3, whole, session(2, { events: ['near-fall'] }))).toMatchObject({
      depth: 'full',
      from: 'clear',
    });
  });
  it('CHECK-4 after a symptom at the last check it has the pressure set, from the first stage, until one without', () => {
    const symptom = id(withSet('stand', 1, 126, { stand: { symptom: true } }), 'c1');
    expect(next(2, symptom)).toMatchObject({ depth: 'full-with-pressure', from: 'clear' });
    expect(next(2, symptom).because[0]).toMatchObject({ rule: 'next-check/with-pressure', facts: ['c1'] });
    expect(rules(4, symptom, withSet('walk', 3))).toEqual([
      'next-check/nothing-changed',
      'next-check/from-last-cleared',
    ]);
    const rising = withSet('edge', 1);
    (rising.payload as { risingSymptoms: string[] }).risingSymptoms = ['nausea'];
    expect(next(2, rising).depth).toBe('full-with-pressure');
  });
  it('while pressure falls on rising it has the pressure set, and begins before standing', () => {
    const fell = id(withSet('walk', 1, 108), 'c1');
    const said = next(2, fell);
    expect(said).toMatchObject({ depth: 'full-with-pressure', from: 'edge' });
    expect(said.because[0]).toMatchObject({ rule: 'next-check/pressure-drop', facts: ['c1'] });
  });
  it('whoever stood here without a whole set is asked for one', () => {
    const said = next(2, id(check('walk', 1), 'c1'));
    expect(said).toMatchObject({ depth: 'full-with-pressure', from: 'edge' });
    expect(said.because[0]).toMatchObject({ rule: 'next-check/no-set-yet', facts: ['c1'] });
    // A set that an aide measured is not enough to leave it out.
    expect(next(3, check('walk', 1), { ...withSet('walk', 2), role: 'aide' }).depth).toBe(
      'full-with-pressure',
    );
    expect(next(14, confirm(11, 'c1'), id(check('walk', 1), 'c1'))).toMatchObject({
      depth: 'full-with-pressure',
      from: 'clear',
    });
  });
  it('while the first time up since surgery or bed rest is ahead it has the pressure set, from the first stage', () => {
    const arrived = { ...begun(), payload: { ...(begun().payload as object), from: 'theatre' } };
    const said = evaluateStay(recordOf([arrived, withSet('edge', 1)]), ward, calendar, hours(2)).view
      .nextCheck;
    expect(said).toMatchObject({ depth: 'full-with-pressure', from: 'clear' });
    expect(said?.because.map((b) => b.words)).toContain(
      'The first time up since surgery or bed rest is still ahead',
    );
    const free = evaluateStay(recordOf([arrived, withSet('walk', 1)]), ward, calendar, hours(2)).view
      .nextCheck;
    expect(free?.because.map((b) => b.words)).toContain(
      'The first time up since surgery or bed rest is to be repeated, held safe',
    );
  });
  it('a nurse who watched an ordinary move keeps the plan, and the check with the pressure set is needed as before', () => {
    const arrived = { ...begun(), payload: { ...(begun().payload as object), from: 'theatre' } };
    const told = [arrived, id(withSet('edge', 1), 'c1'), confirm(2, 'c1')];
    const { trust, nextCheck } = evaluateStay(recordOf(told), ward, calendar, hours(3)).view;
    expect(trust.state).toBe('current');
    expect(nextCheck).toMatchObject({ depth: 'full-with-pressure', from: 'clear' });
  });
  it('CHECK-4 begins again when two checks of one time disagree', () => {
    const two = [id(withSet('walk', 1), 'yes'), id(check('edge', 1, { edge: { outcome: 'not-met' } }), 'no')];
    const said = next(2, ...two);
    expect(said.from).toBe('clear');
    expect(said.because.find((b) => b.rule === 'next-check/conflict')?.facts).toEqual(['no', 'yes']);
  });
  it("begins again, at the ward's own first stage, when the ward changed its protocol since", () => {
    const log = new WardLog();
    setUpWard(log);
    const publish = (version: number, first: string) => {
      const document = structuredClone(DEFAULT_PROTOCOL);
      Object.assign(document, { id: 'ours', version });
      document.stages[0]!.id = first;
      log.add(`ward/${WARD}`, { type: 'protocol-published', payload: { id: 'ours', version, document } });
      return foldWard(WARD, log.events)!;
    };
    const one = publish(1, 'look-first');
    const said = evaluateStay(stayOf(id(withSet('walk', 1), 'c1')), one, calendar, hours(2)).view.nextCheck;
    expect(said).toMatchObject({ depth: 'full', from: 'look-first' });
    expect(said?.because[0]).toEqual({
      rule: 'next-check/protocol-changed',
      facts: ['c1'],
      words: 'The ward works by another protocol since the last check',
    });
    // Another version is another protocol.
    const ours = withSet('walk', 1);
    const payload = ours.payload as { protocol: unknown; stages: { stage: string }[] };
    payload.protocol = { id: 'ours', version: 1 };
    payload.stages[0]!.stage = 'look-first';
    expect(evaluateStay(stayOf(ours), one, calendar, hours(2)).view.nextCheck?.depth).toBe('confirm');
    const two = publish(2, 'look');
    expect(evaluateStay(stayOf(ours), two, calendar, hours(2)).view.nextCheck).toMatchObject({
      depth: 'full',
      from: 'look',
    });
  });
  it.each([
    ['comfort', { scope: 'comfort' }],
    ['clinicians-plan', { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } }],
  ])('there is none under %s', (_, payload) => {
    expect(seen(3, withSet('walk', 1), { type: 'scope-set', at: 2, payload }).view.nextCheck).toBeNull();
  });
});
