import { describe, expect, it } from 'vitest';
import { criticalCareBar } from '@footboard/shared/capabilities/assessments/values';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
// @ts-expect-error a plain script without types
import { words } from '../../docs/clinical/markdown.mjs';
// @ts-expect-error a plain script without types
import { start } from '../../docs/clinical/start.mjs';

const made = (start() as string[]).join('\n');
const rows = made.split('\n');

describe('may we start, as a clinician reads it', () => {
  it('says of each limit of the readings whether it is not now or ask first', () => {
    const { systolicBelow, systolicAbove, heartRateAskFrom, painReliefFirstFrom } = DEFAULT_RULES.start;
    const expected = [
      `| systolic pressure | up to ${systolicBelow.value - 1} mmHg | not now |`,
      `| systolic pressure | from ${systolicAbove.value + 1} mmHg | ask first |`,
      `| heart rate | ${heartRateAskFrom.value} to ${DEFAULT_RULES.start.heartRateAbove.value} a minute | ask first |`,
      `| pain | from ${painReliefFirstFrom.value} of 10 | ask first |`,
    ];
    expect(expected.filter((one) => !made.includes(one))).toEqual([]);
  });

  it('says the same of the signs and the bars of critical care', () => {
    const bars = criticalCareBar.options.map((bar) => `| critical care: ${words(bar)} | not now |`);
    expect(bars.filter((bar) => !made.includes(bar))).toEqual([]);
    expect(rows.filter((r) => r.startsWith('| sedation grade |')).map((r) => r.split(' | ')[2])).toEqual([
      'not now',
      'ask first',
      '-',
      'ask first',
      'not now',
    ]);
  });

  it.each(['the last check', 'orders', 'holds', 'triggers', 'cooperation', 'attachments', 'oxygen'])(
    'has the reasons of %s, each with its word',
    (about) => {
      const of = rows.filter((r) => r.startsWith(`| ${about} |`));
      expect(of.length).toBeGreaterThan(0);
      expect(of.filter((r) => !/ \| (not now|ask first) \| /.test(r))).toEqual([]);
    },
  );
});
