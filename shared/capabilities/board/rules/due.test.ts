/**
 * When the next check is due: the design's validity row and users-job.md 3a. The hours are common
 * practice, no source, to be signed by the ward. The ward's evening shift begins at 19:00, an hour
 * after the stay; the morning one at 07:00, 14 h after it, as the clocks go back that night.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { before, changes, due, first, rulesSaid, rulesWith, seen, withTrigger } from './due.testkit.ts';
import {
  begun,
  check,
  confirm,
  hours,
  order,
  recordOf,
  session,
  stayOf,
  trigger,
} from './history.testkit.ts';

const varies = (at: number) =>
  check('edge', at, {}, { cooperation: { waitsForHelp: 'varies', followsInstructions: 'yes' } });
describe('an open trigger with hours of its own', () => {
  const fell = stayOf(first, { ...trigger('fall', 2), id: 'fell' });
  it('DUE-2 comes before the next move, and by its time also when nobody moves', () => {
    expect(due(fell, before(3))).toEqual({
      state: 'at-next-move',
      at: null,
      because: [
        {
          rule: 'due/trigger',
          facts: ['fell'],
          words: 'Fall, 24 Oct 20:00: before the next move, and by 24 Oct 21:00 also without one',
        },
      ],
    });
    expect(due(fell, 3)).toEqual({
      state: 'overdue',
      at: hours(3),
      because: [
        {
          rule: 'due/trigger-limit',
          facts: ['fell'],
          words: 'Fall, 24 Oct 20:00: looked at within 1 h, also without a move (common practice, no source)',
        },
      ],
    });
  });
  it('is due no later than validity, and both reasons are told once both have passed', () => {
    const late = stayOf(first, { ...trigger('failed-attempt', 3), id: 'failed' });
    expect(due(late, before(13)).state).toBe('at-next-move');
    expect(due(late, 13)).toMatchObject({ state: 'overdue', at: hours(13) });
    expect(rulesSaid(late, 13)).toEqual(['due/validity']);
    expect(rulesSaid(late, before(15))).toEqual(['due/validity']);
    expect(due(late, 15).at).toBe(hours(13));
    expect(rulesSaid(late, 15)).toEqual(['due/validity', 'due/trigger-limit']);
  });
  it('of several the earliest counts', () => {
    const two = stayOf(first, trigger('faint', 2.5), { ...trigger('bleed', 2.25), id: 'bled' });
    expect(due(two, 3.4)).toMatchObject({
      state: 'overdue',
      at: hours(3.25),
      because: [{ facts: ['bled'] }],
    });
    expect(due(two, 3.5).because.map((b) => b.rule)).toEqual(['due/trigger-limit', 'due/trigger-limit']);
  });
  it('is as long as the ward says', () => {
    const half = withTrigger('fall', 0.5);
    expect(due(fell, before(2.5), half).state).toBe('at-next-move');
    expect(due(fell, 2.5, half)).toMatchObject({ state: 'overdue', at: hours(2.5) });
    expect(due(fell, 12.9, withTrigger('fall', null)).state).toBe('at-next-move');
    expect(due(fell, 13, withTrigger('fall', null))).toMatchObject({ state: 'overdue', at: hours(13) });
  });
  it('counts before the first check, too', () => {
    expect(due(stayOf(trigger('faint', 1)), before(2)).state).toBe('at-next-move');
    expect(due(stayOf(trigger('faint', 1)), 2)).toMatchObject({ state: 'overdue', at: hours(2) });
    expect(due(stayOf(trigger('faint', 3.5)), 4)).toMatchObject({ state: 'overdue', at: hours(4) });
  });
  it('is done with once it is answered', () => {
    expect(due(stayOf(first, trigger('fall', 2), check('edge', 2.5)), 3)).toMatchObject({
      state: 'not-due',
      at: hours(14.5),
    });
  });
});

describe('an open trigger without hours', () => {
  const sedated = stayOf(first, { ...trigger('sedation', 2), id: 'given' });
  it('waits for the next move, and not for ever', () => {
    expect(due(sedated, before(14))).toEqual({
      state: 'at-next-move',
      at: null,
      because: [
        { rule: 'due/trigger', facts: ['given'], words: 'Sedated, 24 Oct 20:00: before the next move' },
      ],
    });
    expect(due(sedated, 14)).toMatchObject({ state: 'overdue', at: hours(14) });
  });
  it.each(['return-from-surgery', 'return-from-dialysis', 'sedation', 'block-on', 'block-off'])(
    '%s puts off a check that would run out meanwhile, by 12 h at most',
    (kind) => {
      expect(due(stayOf(first, trigger(kind, 12)), before(24)).state).toBe('at-next-move');
      expect(due(stayOf(first, trigger(kind, 12)), 24)).toMatchObject({ state: 'overdue', at: hours(24) });
    },
  );
  it.each([
    ['an order', order(12, { about: 'activity', most: 'chair' })],
    ['a request to look again', trigger('asked-to-look-again', 12)],
  ] as const)('%s puts off nothing', (_what, told) => {
    expect(due(stayOf(first, told), 13)).toMatchObject({ state: 'overdue', at: hours(13) });
  });
  it('puts off nothing once the ward gives it hours', () => {
    const rules = withTrigger('sedation', 3);
    expect(due(stayOf(first, trigger('sedation', 12)), 13, rules)).toMatchObject({
      state: 'overdue',
      at: hours(13),
    });
    expect(due(sedated, 5, rules)).toMatchObject({ state: 'overdue', at: hours(5) });
  });
});

describe('the first check of a stay', () => {
  it('is within the earlier of the two times the ward gives it', () => {
    expect(due(stayOf(), before(4))).toEqual({
      state: 'not-due',
      at: hours(4),
      because: [
        {
          rule: 'due/arrival',
          facts: ['e00001'],
          words: 'First check within 4 h of arrival (common practice, no source)',
        },
      ],
    });
    expect(due(stayOf(), 1, withTrigger('arrival', 2)).at).toBe(hours(2));
    expect(due(stayOf(), 1, withTrigger('arrival', 6)).at).toBe(hours(4));
    expect(due(stayOf(), 1, withTrigger('arrival', null)).at).toBe(hours(4));
    expect(due(stayOf(), 1, rulesWith({ firstCheckHours: 3 })).at).toBe(hours(3));
  });
});

describe('between due and overdue', () => {
  const grace = rulesWith({ graceMinutes: 30 });
  it('lies the ward’s grace', () => {
    expect(due(stayOf(first), before(13), grace)).toMatchObject({ state: 'not-due', at: hours(13) });
    expect(due(stayOf(first), 13, grace)).toMatchObject({ state: 'due', at: hours(13) });
    expect(due(stayOf(first), before(13.5), grace)).toMatchObject({ state: 'due', at: hours(13) });
    expect(due(stayOf(first), 13.5, grace)).toMatchObject({ state: 'overdue', at: hours(13) });
  });
  it('trust has run out from the due time on, grace or not', () => {
    expect(seen(stayOf(first), hours(13), grace).trust).toMatchObject({
      state: 're-check',
      because: [{ rule: 'trust/ran-out', facts: ['first'] }],
    });
    expect(seen(stayOf(first), hours(before(13)), grace).trust.state).toBe('current');
  });
});

describe('a check before the first move of each shift', () => {
  const surgery = { ...trigger('return-from-surgery', 1), id: 'surgery' };
  const checked = stayOf(surgery, { ...first, at: 2 });
  it('is due from the next shift on, on the first day after surgery', () => {
    expect(seen(checked, hours(before(14)))).toMatchObject({
      trust: { state: 'current' },
      due: { state: 'not-due', at: hours(14) },
    });
    // 20:00 to 07:00 is 12 h that night: the shift begins as the 12 h end; with 24 h it comes first.
    const long = rulesWith({ unsettledHours: 24 });
    expect(seen(checked, hours(before(14)), long).trust.state).toBe('current');
    expect(seen(checked, hours(14), long)).toMatchObject({
      trust: { state: 're-check', because: [{ rule: 'due/each-shift', facts: ['surgery'] }] },
      due: { state: 'at-next-move', at: null },
    });
    expect(rulesSaid(checked, 14, long)).toEqual(['due/each-shift', 'due/validity']);
  });
  it('follows the ward’s roster, not its night', () => {
    const eight = rulesWith({}, ['07:00', '15:00', '23:00']);
    expect(due(checked, before(5), eight).state).toBe('not-due');
    expect(due(checked, 5, eight).state).toBe('at-next-move');
    const split = rulesWith({}, ['07:00', '11:00', '15:30', '21:30']);
    expect(due(checked, before(3.5), split).state).toBe('not-due');
    expect(due(checked, 3.5, split).state).toBe('at-next-move');
  });
  it('ends a day after surgery', () => {
    const again = stayOf(surgery, { ...first, at: 2 }, { ...check('edge', 14.5), id: 'again' });
    const long = rulesWith({ unsettledHours: 24 }, ['07:00', '15:00', '23:00']);
    expect(due(again, before(25), long).state).toBe('at-next-move');
    expect(due(again, 25, long)).toMatchObject({ state: 'not-due', at: hours(38.5) });
  });
  it('holds for someone who arrives from theatre', () => {
    const { payload, ...arrival } = begun();
    const eight = rulesWith({}, ['07:00', '15:00', '23:00']);
    const theatre = { ...arrival, id: 'from', payload: { ...(payload as object), from: 'theatre' } };
    expect(due(recordOf([theatre, first]), 5, eight)).toMatchObject({
      state: 'at-next-move',
      because: [{ rule: 'due/each-shift', facts: ['from'] }, { rule: 'due/validity' }],
    });
    expect(due(stayOf(first), 5, eight).state).toBe('not-due');
  });
  it('holds while help is waited for only sometimes, for the ward’s window', () => {
    const eight = rulesWith({}, ['07:00', '15:00', '23:00']);
    const sometimes = stayOf({ ...varies(2), id: 'varies' });
    expect(seen(sometimes, hours(before(5)), eight).trust.state).toBe('current');
    expect(seen(sometimes, hours(5), eight)).toMatchObject({
      trust: {
        state: 're-check',
        because: [
          {
            rule: 'due/each-shift',
            facts: ['varies'],
            words: 'Waits for help only sometimes: before the first move of each shift',
          },
        ],
      },
      due: { state: 'at-next-move' },
    });
    const short = rulesWith({ cooperationWindowHours: 4 }, ['07:00', '15:00', '23:00']);
    expect(due(sometimes, before(6), short).state).toBe('at-next-move');
    expect(due(sometimes, 6, short).state).toBe('not-due');
  });
  it('is due as before once validity has run out', () => {
    expect(due(stayOf(varies(2)), 14)).toMatchObject({ state: 'overdue', at: hours(14) });
  });
});

describe('a check in every shift, where the ward turned it on', () => {
  const every = (shiftsFrom?: readonly string[], more: object = {}) =>
    rulesWith({ eachShift: true, unsettledHours: 24, ...more }, shiftsFrom);
  it('is due that far into the shift after the last check, whatever the hours', () => {
    const view = seen(stayOf(first), hours(before(18)), every());
    expect(view).toMatchObject({ trust: { state: 'current' }, due: { state: 'not-due', at: hours(18) } });
    expect(view.due.because).toEqual([
      {
        rule: 'due/every-shift',
        facts: ['first'],
        words:
          'A check in every shift, within 4 h of its start: the last one was in the shift to ' +
          '25 Oct 07:00 (common practice, no source)',
      },
    ]);
    expect(seen(stayOf(first), hours(18), every())).toMatchObject({
      trust: { state: 're-check', because: [{ rule: 'trust/ran-out' }] },
      due: { state: 'overdue', at: hours(18) },
    });
  });
  it('is off unless turned on', () => {
    expect(due(stayOf(first), 18, rulesWith({ unsettledHours: 24 }))).toMatchObject({ at: hours(25) });
  });
  it('counts the shift in which the check was made, from its very first instant', () => {
    // The evening shift begins at 1 h.
    expect(due(stayOf(check('edge', before(1))), 3, every()).at).toBe(hours(5));
    expect(due(stayOf(check('edge', 1)), 3, every()).at).toBe(hours(18));
  });
  it('is renewed by a check or a nurse’s confirm in the shift, not by an aide', () => {
    expect(due(stayOf(first, confirm(15, 'first')), 19, every()).at).toBe(hours(30));
    expect(due(stayOf(first, confirm(15, 'first', 'aide')), 19, every()).state).toBe('overdue');
    expect(due(stayOf(first, session(15)), 19, every()).state).toBe('overdue');
  });
  it('never puts off the hours since the check', () => {
    expect(due(stayOf(first), 2, every(undefined, { unsettledHours: 12 }))).toMatchObject({
      at: hours(13),
      because: [{ rule: 'due/validity' }],
    });
  });
  it('is not put off by a trigger that waits for the next move', () => {
    const sedated = stayOf(first, trigger('sedation', 12));
    expect(due(sedated, before(18), every()).state).toBe('at-next-move');
    expect(due(sedated, 18, every())).toMatchObject({
      state: 'overdue',
      at: hours(18),
      because: [{ rule: 'due/every-shift' }],
    });
  });
  it('follows an eight-hour and a split roster', () => {
    expect(due(stayOf(first), 3, every(['07:00', '15:00', '23:00'])).at).toBe(hours(9));
    expect(due(stayOf(first), 3, every(['07:00', '11:00', '15:30', '21:30'])).at).toBe(hours(7.5));
    expect(due(stayOf(first), 3, every(undefined, { intoShiftHours: 2 })).at).toBe(hours(16));
  });
});

describe('an instant at which a due time can change', () => {
  const eight = rulesWith({ unsettledHours: 24 }, ['07:00', '15:00', '23:00']);
  it.each([
    ['of a trigger', stayOf(first, trigger('fall', 2)), 3, DEFAULT_RULES],
    ['of the first check', stayOf(), 4, DEFAULT_RULES],
    ['of validity', stayOf(first), 13, DEFAULT_RULES],
    ['of grace', stayOf(first), 13.5, rulesWith({ graceMinutes: 30 })],
    ['of a shift', stayOf(varies(2)), 5, eight],
    [
      'of the end of the first day after surgery',
      stayOf(trigger('return-from-surgery', 1.5), first),
      25.5,
      eight,
    ],
    ['of the end of varying help', stayOf(varies(2)), 26, eight],
    ['of a check in every shift', stayOf(first), 18, rulesWith({ eachShift: true, unsettledHours: 24 })],
    ['of what waits for the next move', stayOf(first, trigger('sedation', 12.3)), 24.3, DEFAULT_RULES],
  ])('%s is told before it comes', (_what, stay, at, rules) => {
    expect(changes(stay, 2.5, 30, rules)).toContain(at);
  });
});
