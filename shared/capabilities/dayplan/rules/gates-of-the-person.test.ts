/** Why somebody is not on the round at all, and what would put them there, whole. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, hold, hours, order, trigger, type Told } from '../../board/rules/history.testkit.ts';
import { rowFor } from '../../board/rules/for-wall.ts';
import { reading } from '../../assessments/rules/told-start.testkit.ts';
import { gate, gateAt, h, iso, NOON, say, unchecked, unread } from './gates-told.testkit.ts';
import { gettingUp, stopOf, whoStop } from './round-gates.ts';
import { bedOf, rowOf } from './round.testkit.ts';

const scope = (of: object): Told => ({ type: 'scope-set', at: h(0), payload: of });
const COMFORT = scope({ scope: 'comfort' });
const FENCED = scope({ scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } });
const NOT_READ = {
  kind: 'not-read',
  because: { rule: 'round/not-read', facts: [], words: 'The entries of this person are not read here yet' },
  until: 'Once they are read; who it is, is confirmed at the bed by two identifiers',
};
/** Ordered to stay in bed, and checked as far as that. */
const orderedToBed = unchecked(
  { ...order(h(-1), { about: 'activity', most: 'bed' }), id: 'to-bed' },
  { ...check('upright', h(-0.5)), id: 'the-check' },
);
const away = (dueBack?: string): Told => ({
  type: 'went-off-ward',
  at: h(3),
  payload: { reason: 'test', ...(dueBack === undefined ? {} : { dueBack }) },
});
const nurseFirst = (words: string, ...facts: readonly string[]) => ({
  kind: 'nurse-first',
  because: { rule: 'round/nurse-first', facts, words },
  until: 'Once a nurse has checked',
});
const CHECK_FIRST = nurseFirst('CHECK BEFORE MOVING: a nurse looks first');

describe('somebody of whom the list says nothing', () => {
  it('given none of their entries is read, then that is said, and that two identifiers say who it is', () => {
    expect(gateAt(NOON, unread())).toEqual(NOT_READ);
  });

  it.each(['initials', 'bed-only', 'visitors'] as const)(
    'given only what a wall may say of them (%s), then the rest counts as not read',
    (level) => {
      const onWall = rowFor(bedOf(1, rowOf(NOON)), level).stay!;
      expect(gateAt(NOON, onWall)).toEqual(NOT_READ);
    },
  );

  it('given they are off the ward, then since when, and due back when that was said', () => {
    const gone = (words: string) => ({
      kind: 'away',
      because: { rule: 'round/away', facts: [], words },
      until: 'Once they are back',
    });
    expect(gate(away())).toEqual(gone('Off the ward since 11:00'));
    expect(gate(away(iso(5.5)))).toEqual(gone('Off the ward since 11:00, due back 13:30'));
  });

  it("given a clinician's plan only, then the nurse is asked what it says", () => {
    expect(gate(FENCED)).toEqual({
      kind: 'clinicians-plan',
      because: { rule: 'round/clinicians-plan', facts: [], words: "Clinician's plan only" },
      until: 'Ask the nurse what that plan says for today',
    });
  });

  it.each([
    ['comfort', COMFORT],
    ["clinician's", FENCED],
  ])('given a %s plan, then no plan of the day allows a move out of bed', (_which, told) => {
    expect(gettingUp(rowOf(NOON, told))).toEqual([]);
  });
});

describe('somebody kept in bed', () => {
  it('given a hold, then what it stops, since when, when it is reviewed, and the entry', () => {
    expect(gate(hold(h(1), 'all-including-turning', h(9), { id: 'the-hold' }))).toEqual({
      kind: 'held',
      because: {
        rule: 'round/held',
        facts: ['the-hold'],
        words: 'Hold on all including turning since 09:00',
      },
      until: 'Once a nurse or therapist ends the hold, review 17:00',
    });
  });

  it.each(['walking', 'standing'])('given a hold on %s alone, then they may still get up to less', (what) => {
    expect(gate(hold(h(1), what, h(9)))).toBeNull();
  });

  it('given an order for bed, then the plan allows no move out of it, by that order', () => {
    expect(gateAt(NOON, orderedToBed)).toEqual({
      kind: 'held',
      because: {
        rule: 'round/held',
        facts: ['the-check', 'to-bed'],
        words: 'The plan allows no move out of bed',
      },
      until: 'Once the plan allows one',
    });
  });
});

describe('somebody a nurse looks at first', () => {
  it('given they were never checked here, then CHECK BEFORE MOVING', () => {
    expect(gateAt(NOON, unchecked())).toEqual(CHECK_FIRST);
  });

  it('given a nurse only saw them walk, then CHECK BEFORE MOVING all the same', () => {
    const seen: Told = { type: 'seen-walking', at: h(3), payload: { walkingSupport: 'none' } };
    const row = unchecked(seen);
    expect(row.checkBeforeMoving).toBe(false);
    expect(gateAt(NOON, row)).toEqual(CHECK_FIRST);
  });

  it('given something happened since the check, then what, when, and the entry', () => {
    const asked: Told = { ...trigger('asked-to-look-again', h(1)), id: 'asked' };
    expect(gate(asked)).toEqual(
      nurseFirst('A nurse checks first: Asked to look again before the next move, 09:00', 'asked'),
    );
  });

  it('given the last check ran out, then that', () => {
    const t = hours(h(4 + 24));
    const [told] = rowOf(t).trust.because;
    expect(gateAt(t, rowOf(t))).toEqual(
      nurseFirst('A nurse checks first: the last check ran out', ...told!.facts),
    );
    expect(told!.facts).toHaveLength(1);
  });

  it('given two orders of one time that do not agree, then that, and both', () => {
    const arm = (bears: string, id: string): Told => ({
      ...order(h(-2), { about: 'weight-bearing', limb: 'left-arm', bears }),
      id,
    });
    const twice = gate(arm('none', 'one-order'), arm('unrestricted', 'the-other'), check('walk', h(-0.5)));
    expect(twice?.kind).toBe('nurse-first');
    expect(twice?.because.words).toBe(
      'A nurse checks first: Order (weight bearing left arm): two orders of the same time differ; the stricter stands',
    );
    expect(twice?.because.facts.toSorted()).toEqual(['one-order', 'the-other']);
  });

  it('given a reading against starting, then which, and the entry it was taken in', () => {
    const breathing = reading(['breathing', 34], h(2));
    const fast = check('walk', h(2), {}, { readings: [breathing] });
    expect(gate({ ...fast, id: 'short-of-breath' })).toEqual({
      kind: 'not-now',
      because: {
        rule: 'round/not-now',
        facts: ['short-of-breath'],
        words: 'Not now: breathing rate 34 is above 30',
      },
      until: 'Once a nurse has looked',
    });
  });
});

describe('what stands against a visit, whatever the hour', () => {
  const stop = (inBed: boolean, ...told: readonly Told[]) => stopOf(rowOf(NOON, ...told), { say }, inBed);

  it('given nothing does, then nothing, in bed or out of it', () => {
    expect([stop(true), stop(false)]).toEqual([null, null]);
  });

  it.each<[string, string, Told]>([
    ['off the ward', 'away', away()],
    ['comfort plan', 'comfort', COMFORT],
    ['hold', 'held', hold(h(1), 'out-of-bed', h(9))],
    ['something happened since the check', 'nurse-first', trigger('asked-to-look-again', h(1))],
  ])('given %s, then that, in bed or out of it', (_what, kind, told) => {
    expect([stop(true, told)?.kind, stop(false, told)?.kind]).toEqual([kind, kind]);
  });

  it('given a symptom is new, then out of bed the plan stops them; in bed a nurse still looks first', () => {
    const symptom = trigger('new-symptom', h(1));
    expect([stop(false, symptom)?.kind, stop(true, symptom)?.kind]).toEqual(['held', 'nurse-first']);
  });

  it('given an order to stay in bed, then nothing stops exercise there but a sign against it', () => {
    expect(stopOf(orderedToBed, { say }, false)?.kind).toBe('held');
    expect(stopOf(orderedToBed, { say }, true)).toBeNull();
    const breathing = reading(['breathing', 34], h(2));
    const fast = unchecked(
      order(h(-1), { about: 'activity', most: 'bed' }),
      check('upright', h(2), {}, { readings: [breathing] }),
    );
    expect(stopOf(fast, { say }, true)?.because.words).toBe('Not now: breathing rate 34 is above 30');
  });

  it('given a hold, then it is no matter of where they are or whose plan they are under', () => {
    expect(whoStop(rowOf(NOON, hold(h(1), 'out-of-bed', h(9))), { say })).toBeNull();
    expect(whoStop(rowOf(NOON, away()), { say })?.kind).toBe('away');
  });
});
