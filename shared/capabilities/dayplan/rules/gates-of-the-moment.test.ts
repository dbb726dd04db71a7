/** Why somebody is not on the round just now: up, resting, said no, a bad moment. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, hours, notDone, session, type Told } from '../../board/rules/history.testkit.ts';
import { gate, gateAt, h, iso, NOON } from './gates-told.testkit.ts';
import { rowOf } from './round.testkit.ts';

const walked = (at: number): Told => ({ ...session(h(at)), id: 'the-walk' });
const sat = (at: number, backToBedBy: number): Told => ({
  ...session(h(at), { activities: ['chair'], left: 'chair', backToBedBy: iso(backToBedBy) }),
  id: 'the-chair',
});
const no = (at: number, group = 'said-no'): Told => ({ ...notDone(h(at), group), id: `no-${at * 100}` });
const stops = (kind: string, words: string, until: string, ...facts: readonly string[]) => ({
  kind,
  because: { rule: `round/${kind}`, facts, words },
  until,
});

describe('somebody up or resting', () => {
  const inChair = stops(
    'up-now',
    'In the chair since 11:15, back to bed by 12:30',
    'From 12:30 on',
    'the-chair',
  );
  it('given they sit in the chair, then since when and back to bed by when, until that minute', () => {
    expect(gate(sat(3.25, 4.5))).toEqual(inChair);
    expect(gate(sat(3.25, 4 + 1 / 60))?.kind).toBe('up-now');
  });

  it('given they should be back in bed by now, then they are listed for that, with no rest first', () => {
    expect(gate(sat(3.25, 4))).toBeNull();
    expect(gate(sat(3.25, 3.75))).toBeNull();
  });

  it('given nobody said when they are to be back in bed, then it is up to their being back', () => {
    const row = rowOf(NOON, sat(3.25, 4.5));
    expect(gateAt(NOON, { ...row, chair: { ...row.chair!, backBy: null } })).toEqual(
      stops('up-now', 'In the chair since 11:15', 'Once they are back in bed', 'the-chair'),
    );
  });

  it('given they were up within the hour, then they rest from that entry on', () => {
    expect(gate(walked(3.5))).toEqual(
      stops('resting', 'Resting: last up 11:30', 'From 12:30 on', 'the-walk'),
    );
  });

  it('given a no before it that is still heeded, then they rest first', () => {
    expect(gate(no(3.25), walked(3.5))).toEqual(
      stops('resting', 'Resting: last up 11:30', 'From 12:30 on', 'the-walk'),
    );
  });

  it('given the time after it could not be done, then the wait for that, the longer one, is told', () => {
    expect(gate(walked(3.25), no(3.75, 'no-kit'))).toEqual(
      stops('later', 'Not done 11:45: no kit', 'From 12:15 on', 'no-375'),
    );
  });

  it('given the time after it could not be done and that wait is over first, then they rest on', () => {
    expect(gate(walked(3.4), no(3.45, 'bad-moment'))).toEqual(
      stops('resting', 'Resting: last up 11:24', 'From 12:24 on', 'the-walk'),
    );
  });

  it('given night, then asleep, unless they ask', () => {
    const t = hours(28.5);
    expect(gateAt(t, rowOf(t, check('walk', 27)))).toEqual(
      stops('night', 'Night: asleep, unless they ask', 'From 07:00 on'),
    );
  });
});

describe('somebody it was not done with', () => {
  it('given they said no, then when, and from when on they are asked in another way', () => {
    expect(gate(no(3.5))).toEqual(
      stops('said-no', 'Said no 11:30', 'From 12:30 on, asked in another way', 'no-350'),
    );
  });

  it('given a bad moment, then that, and from when on', () => {
    expect(gate(no(3.75, 'bad-moment'))).toEqual(
      stops('later', 'Not done 11:45: bad moment', 'From 12:15 on', 'no-375'),
    );
  });

  it('given three refusals in a row, then a nurse or therapist talks with them first', () => {
    const noes = [no(0.5), no(1.5), no(2.5)];
    expect(gate(...noes)).toEqual(
      stops(
        'talk-first',
        'Said no several times in a row: a nurse or therapist talks with them first',
        'Once a session is recorded',
        'no-50',
        'no-150',
        'no-250',
      ),
    );
  });
});
