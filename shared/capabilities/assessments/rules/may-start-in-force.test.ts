/** May we start, over whole stays: triggers, holds, orders, attachments, waiting and following. */
import { describe, expect, it } from 'vitest';
import { hold, hours, order, trigger } from '../../board/rules/history.testkit.ts';
import { triggerKind, type TriggerKind } from '../../orders/values.ts';
import { ask, checked, said, well } from './may-start-now.testkit.ts';

describe('what is in force (common practice, no source)', () => {
  const record = (kind: TriggerKind, h: number) => ({ ...trigger(kind, h), id: 'trigger' });
  it.each(triggerKind.options.filter((k) => k !== 'early-warning-rise' && k !== 'arrival'))(
    'a trigger "%s" nobody has looked at asks first, or is not now where its row keeps the person in bed',
    (kind) => {
      const asksOnly: readonly TriggerKind[] = [
        'return-from-surgery',
        'return-from-dialysis',
        'sedation',
        'block-on',
        'block-off',
        'order-change',
        'attachment-change',
        'failed-attempt',
        'step-down-from-intensive-care',
        'asked-to-look-again',
        'board-wrong',
      ];
      const view = ask(3, [checked(), record(kind, 2)]);
      expect(view.word).toBe(asksOnly.includes(kind) ? 'ask-first' : 'not-now');
      expect(view.reasons).toMatchObject([
        {
          words: expect.stringMatching(/^[A-Z].*; not looked at since$/),
          facts: ['trigger'],
          source: 'common practice, no source',
        },
      ]);
      const pressureSet = { depth: 'full-with-pressure', answers: ['trigger'] };
      expect(ask(5, [checked(), record(kind, 2), checked(4, well(4), pressureSet)]).reasons).toEqual([]);
    },
  );
  it.each([
    ['walking', 'ask-first', 'hold on walking (waiting for review)'],
    ['standing', 'ask-first', 'hold on standing: up to the edge of the bed only (waiting for review)'],
    ['out-of-bed', 'not-now', 'hold on getting out of bed (waiting for review)'],
    ['raising-the-back', 'not-now', 'hold on raising the back (waiting for review)'],
    ['all-including-turning', 'not-now', 'hold on all moves, turning too (waiting for review)'],
  ] as const)('a hold on %s is %s', (scope, word, words) => {
    const told = [checked(), hold(2, scope, 4, { id: 'held' })];
    expect(ask(3, told).reasons).toEqual([
      { word, words, limit: null, source: 'the hold on this stay', takenAt: null, facts: ['held'] },
    ]);
    expect(said(4, told)).toEqual([`${word}: ${words}; HOLD REVIEW DUE`]);
  });
  it('an order that keeps the person in bed or at its edge is said; one that only limits is not', () => {
    const most = (value: string) =>
      said(4, [checked(), order(2, { about: 'activity', most: value }), checked(3)]).filter((w) =>
        w.includes('order:'),
      );
    expect(most('bed')).toEqual(['not-now: order: stays in bed']);
    expect(most('edge-of-bed')).toEqual(['ask-first: order: up to the edge of the bed only']);
    for (const value of ['chair', 'stand', 'walk', 'no-limit']) {
      expect(most(value)).toEqual([]);
    }
  });
  it.each([
    ['urinary-catheter', 'nobody', false, 'urinary catheter: nobody disconnects it'],
    ['chest-drain', 'nurse', true, 'chest drain: needs a person to itself; a nurse disconnects it'],
    ['oxygen-cylinder', 'anyone-trained', false, 'oxygen cylinder: anyone trained disconnects it'],
    ['iv-line', 'nurse', false, null],
    ['oxygen-wall', 'anyone-trained', false, null],
  ])('an attachment: %s that %s disconnects', (kind, disconnects, needsOwnPerson, words) => {
    const payload = { attachment: 'a1', kind, disconnects, needsOwnPerson };
    const told = [{ type: 'attachment-added', at: 0.5, id: 'attached', payload }, checked()];
    const view = ask(2, told);
    expect(view.reasons.map((r) => [r.word, r.words, r.facts])).toEqual(
      words ? [['ask-first', words, ['attached']]] : [],
    );
  });
  it.each([
    ['no', 'yes', 'does not wait for help: never alone'],
    ['varies', 'yes', 'waits for help only sometimes: never alone'],
    ['yes', 'no', 'does not follow instructions: ask who should be there and how to ask'],
    ['yes', 'yes', null],
  ])('waits for help %s, follows instructions %s', (waitsForHelp, followsInstructions, words) => {
    const view = ask(2, [checked(1, well(1), { cooperation: { waitsForHelp, followsInstructions } })]);
    expect(view.reasons.map((r) => [r.word, r.words, r.takenAt, r.facts])).toEqual(
      words ? [['ask-first', words, hours(1), ['check-1']]] : [],
    );
  });
  it('the worst answer of the last 24 h decides, by the entry that gave it', () => {
    const told = [
      checked(1, well(1), { cooperation: { waitsForHelp: 'no', followsInstructions: 'yes' } }),
      checked(2),
    ];
    expect(ask(3, told).reasons).toMatchObject([
      { words: 'does not wait for help: never alone', facts: ['check-1'] },
    ]);
  });
});
