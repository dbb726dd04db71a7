import { describe, expect, it } from 'vitest';
import { stayRow } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import WallShowingForm from './WallShowingForm.vue';

describe('what walls show of a person', () => {
  it('begins with what stands, and records the wish in two taps', async () => {
    const form = bench(WallShowingForm, { stay: 's1', view: stayRow({ wall: 'as-ward' }) });
    const radios = form.wrapper.findAll<HTMLInputElement>('input[type=radio]');
    expect(radios.map((radio) => radio.element.checked)).toEqual([true, false]);
    await radios[1]!.setValue();
    await form.tap('Record the wish');
    expect(form.sent).toMatchObject([
      { name: 'set-wall-showing', body: { data: { stay: 's1', showing: 'nothing' } } },
    ]);
  });
});
