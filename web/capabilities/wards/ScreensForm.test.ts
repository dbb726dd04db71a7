import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { boardRow } from '../../board/rows.testkit.ts';
import { followWardUnits } from '../../units/ward-units.ts';
import { capitalsOn } from './panel-size.ts';
import ScreensForm from './ScreensForm.vue';

let page: VueWrapper;
let sent: { name: string; data: unknown }[];
beforeEach(() => {
  setActivePinia(createPinia());
  sent = [];
  vi.stubGlobal('fetch', (path: string, init: RequestInit) => {
    sent.push({
      name: path.split('/').at(-1)!,
      data: (JSON.parse(init.body as string) as { data: unknown }).data,
    });
    return Promise.resolve(
      Response.json({
        commandId: 'c1',
        outcome: 'accepted',
        position: 9,
        events: [],
        shown: true,
        repeated: false,
      }),
    );
  });
  page = mount(ScreensForm, { props: { ward: 'w1', board: boardRow([]) } });
});
afterEach(() => {
  page.unmount();
  vi.unstubAllGlobals();
  followWardUnits({ weight: 'kg', length: 'm' });
});
const typed = async (legend: string, text: string) => {
  const field = page.findAll('.amount').find((one) => one.find('label').text() === legend)!;
  await field.find('input').setValue(text);
  await field.find('input').trigger('change');
};
const choose = (value: string) => page.find(`input[value="${value}"]`).setValue();
const save = async () => {
  await page.find('form').trigger('submit');
  await flushPromises();
};

describe('the screens of a ward', () => {
  // 20 minutes of arc at 5 m are 29.1 mm, 16 are 23.3 mm; a 55-inch panel is 685 mm high, so 29.1 mm are 45.9 of 1080 pixels (references.md, size of text).
  it('says how large capitals must be', async () => {
    expect(capitalsOn({ inches: 55, metres: 5 })).toEqual({
      mm24: '29.1',
      mm36: '23.3',
      px24: 46,
      px24at4k: 92,
      px36: 37,
      px36at4k: 74,
    });
    expect(page.text()).toContain(
      'Read from 5 m, capitals must be 29.1 mm high with up to 24 beds (46 pixels',
    );
    await typed('To be read from', '10');
    expect(page.text()).toContain('Read from 10 m, capitals must be 58.2 mm');
  });
  it('sends only what was changed', async () => {
    await choose('lb');
    await choose('de');
    await save();
    expect(sent).toEqual([
      { name: 'change-ward', data: { units: { weight: 'lb', length: 'm' }, language: 'de' } },
    ]);
    expect(page.text()).toContain('Saved.');
  });
  it('sends the panel whole, its distance in metres whatever the ward writes', async () => {
    followWardUnits({ weight: 'kg', length: 'ft' });
    await typed('To be read from', '13');
    await save();
    // 13 ft of 0.3048 m each (exact), to the millimetre.
    expect(sent).toEqual([{ name: 'change-ward', data: { panel: { inches: 55, metres: 3.962 } } }]);
  });
  it('names a size that no panel has, and sends nothing', async () => {
    await typed('Panel of the wall, corner to corner', '500');
    await save();
    expect(page.text()).toContain('The diagonal is 10 to 120 inches.');
    expect(sent).toEqual([]);
  });
});
