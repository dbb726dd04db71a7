/** Who disconnects what is attached, in words beside the plan: design, attachment. */
import { describe, expect, it } from 'vitest';
import { planStay } from './plan.ts';
import { planInput, stated, walker } from './plan.testkit.ts';

describe('what is attached', () => {
  it.each([
    ['nobody', 'chest drain: nobody disconnects it'],
    ['nurse', 'chest drain: nurse disconnects it'],
    ['anyone-trained', 'chest drain: anyone trained disconnects it'],
  ])('says who disconnects it: %s', (disconnects, words) => {
    const attachments = [
      stated({ kind: 'chest-drain' as const, needsOwnPerson: false, disconnects }, 0, 'drain'),
    ];
    expect(planStay(planInput(walker, { attachments })).cautions).toEqual([
      { words, because: [{ rule: 'attachments', words, facts: ['drain'] }] },
    ]);
  });
});
