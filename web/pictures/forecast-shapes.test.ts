import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import { FORECAST } from '../boards/parts/samples.ts';
import { ZONE } from '../boards/parts/rows.ts';
import ForecastPicture from './ForecastPicture.vue';
import { forecastShapes } from './forecast-shapes.ts';

const [group] = FORECAST.groups;
const shapes = (width = 900, text = 13) => forecastShapes(group!, FORECAST, { width, zone: ZONE, text });

describe('the picture of a forecast', () => {
  it('stands each quarter hour beside the next, on one base, within the width', () => {
    const { columns, base, left, right } = shapes();
    expect(columns).toHaveLength(96);
    expect(columns[0]!.x).toBeGreaterThanOrEqual(left);
    expect(columns.at(-1)!.x + columns.at(-1)!.width).toBeLessThanOrEqual(right + 0.001);
    for (const { within } of columns) expect(within.y + within.height).toBeCloseTo(base, 6);
  });

  it('parts what there is enough for from what is above it', () => {
    const { columns, base } = shapes();
    const peak = columns[8]!;
    expect(peak.slot.wanted).toBeGreaterThan(peak.slot.sure);
    expect(peak.above.height).toBeGreaterThan(0);
    expect((peak.within.height + peak.above.height) / (base - peak.above.y)).toBeCloseTo(1, 6);
    expect(columns[60]!.above.height).toBe(0);
  });

  it('leaves a gap where hardly anybody asks, which is no zero', () => {
    const { columns } = shapes();
    expect(columns[80]!.late).toBeNull();
    expect(columns[8]!.late!.height).toBeGreaterThan(0);
    expect(columns[8]!.late!.high).toBeLessThan(columns[8]!.late!.low);
  });

  it('draws what is there as a line, and once more where some pieces are not known', () => {
    expect(shapes().most).not.toBeNull();
    const known = { ...group!, slots: group!.slots.map((slot) => ({ ...slot, most: slot.sure })) };
    expect(forecastShapes(known, FORECAST, { width: 900, zone: ZONE, text: 13 }).most).toBeNull();
  });

  it('keeps room for its text on a phone and on a projector', () => {
    for (const [width, text] of [
      [320, 13],
      [1800, 24],
    ] as const) {
      const { ticks } = shapes(width, text);
      const gaps = ticks.slice(1).map((tick, i) => tick.x - ticks[i]!.x);
      expect(ticks.length).toBeGreaterThan(1);
      expect(Math.min(...gaps)).toBeGreaterThan(text * 3);
    }
  });

  it('says in its table all that it draws', async () => {
    const picture = mount(ForecastPicture, { props: { group: group!, page: FORECAST, zone: ZONE } });
    const rows = picture.findAll('tbody tr').map((row) => row.text());
    expect(rows).toHaveLength(96);
    expect(rows[8]).toContain('2.8');
    expect(rows[8]).toMatch(/91 %\s*\(81 % to 99 %\)/);
    expect(rows[30]).toContain('1, perhaps 2');
    expect(rows[80]).toContain('hardly asked');
    await nextTick();
    expect(picture.find('svg.forecast').exists()).toBe(true);
  });
});
