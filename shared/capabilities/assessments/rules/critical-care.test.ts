import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { criticalCareBar, criticalCareSigns, type CriticalCareSigns } from '../values.ts';
import { judgeCriticalCare } from './critical-care.ts';

const limits = DEFAULT_RULES.criticalCare;
const judge = (signs: Partial<CriticalCareSigns>, ago = 0) =>
  judgeCriticalCare(criticalCareSigns.parse(signs), limits, ago);
const word = (signs: Partial<CriticalCareSigns>, ago = 0) => {
  const words = judge(signs, ago).map((r) => r.word);
  expect(words.length).toBeLessThan(2);
  return words[0] ?? null;
};

describe('critical care (Hodgson et al., Crit Care 2014;18:658)', () => {
  it.each([
    // Red below 90 %; the other published set (Crit Care Res Pract 2020 ID 7840743 table 5) has 88: the stricter.
    [{ saturation: 89 }, 'not-now'],
    [{ saturation: 90 }, null],
    // Caution above 30 a minute; the other set has 40: the stricter.
    [{ breathing: 30 }, null],
    [{ breathing: 31 }, 'ask-first'],
    // -1 to +1 is clear, beyond 2 is red, so that 2 on either side is a caution (derived).
    [{ sedation: -3 }, 'not-now'],
    [{ sedation: -2 }, 'ask-first'],
    [{ sedation: -1 }, null],
    [{ sedation: 1 }, null],
    [{ sedation: 2 }, 'ask-first'],
    [{ sedation: 3 }, 'not-now'],
    [{ confusedNotFollowing: true }, 'ask-first'],
    [{ confusedNotFollowing: false }, null],
    // 120 to 150 a caution (from memory).
    [{ heartRate: 119 }, null],
    [{ heartRate: 120 }, 'ask-first'],
  ] as const)('%j: %s', (signs, answer) => {
    expect(word(signs)).toBe(answer);
    for (const reason of judge(signs)) expect(reason.source).toContain('Hodgson');
  });
  it.each(criticalCareBar.options)('%s bars moving', (bar) => {
    expect(judge({ bars: [bar] })).toEqual([
      {
        word: 'not-now',
        words: `critical care: ${bar.replaceAll('-', ' ')}`,
        limit: null,
        source: 'Hodgson et al., Crit Care 2014;18:658',
      },
    ]);
  });
  it('a running vasoactive drug always asks: the experts agreed on no dose', () => {
    expect(word({ vasoactive: 'steady' })).toBe('ask-first');
    expect(word({ vasoactive: 'none' })).toBeNull();
    expect(judge({ vasoactive: 'steady' })[0]!.source).toContain('no dose was agreed');
  });
  it('a temperature of 38.5 asks; with active cooling nobody starts (from memory)', () => {
    expect(word({ temperature: 38.4, activeCooling: true })).toBeNull();
    expect(word({ temperature: 38.5 })).toBe('ask-first');
    expect(word({ temperature: 38.5, activeCooling: false })).toBe('ask-first');
    expect(word({ temperature: 38.5, activeCooling: true })).toBe('not-now');
    expect(judge({ temperature: 39, activeCooling: true })[0]!.source).toContain('from memory');
  });
});

describe('critical care (cut-offs tabulated in Crit Care Res Pract 2020 ID 7840743 table 5)', () => {
  it.each([
    // To proceed: heart rate > 40 and < 130, mean pressure > 60, FiO2 < 0.6, PEEP < 10. The edges
    // themselves do not pass; the other set has FiO2 and PEEP green at the edge: the stricter.
    [{ heartRate: 40 }, 'not-now'],
    [{ heartRate: 41 }, null],
    [{ heartRate: 129 }, 'ask-first'],
    [{ heartRate: 130 }, 'not-now'],
    [{ meanPressure: 60 }, 'not-now'],
    [{ meanPressure: 61 }, null],
    [{ oxygenFraction: 0.59 }, null],
    [{ oxygenFraction: 0.6 }, 'ask-first'],
    [{ endExpiratory: 9 }, null],
    [{ endExpiratory: 10 }, 'ask-first'],
  ] as const)('%j: %s', (signs, answer) => {
    expect(word(signs)).toBe(answer);
  });
  it('a vasoactive drug new or raised in the last 2 hours is not now, later it asks', () => {
    expect(word({ vasoactive: 'new-or-raised' }, 2 * HOUR - 1)).toBe('not-now');
    expect(word({ vasoactive: 'new-or-raised' }, 2 * HOUR)).toBe('ask-first');
    expect(judge({ vasoactive: 'new-or-raised' })[0]).toMatchObject({ limit: 2 });
  });
});

describe('critical care (Japanese consensus of 2023 as tabulated in J-ReCIP 2023 table 1)', () => {
  it('a mean pressure above 100 asks', () => {
    expect(word({ meanPressure: 100 })).toBeNull();
    expect(word({ meanPressure: 101 })).toBe('ask-first');
    expect(judge({ meanPressure: 101 })[0]!.source).toContain('2023');
  });
});

describe('critical-care signs', () => {
  it("measure the mean pressure against the person's own lower target", () => {
    expect(word({ meanPressure: 64, meanPressureTarget: 65 })).toBe('not-now');
    expect(word({ meanPressure: 65, meanPressureTarget: 65 })).toBeNull();
    expect(word({ meanPressure: 55, meanPressureTarget: 55 })).toBeNull();
    expect(judge({ meanPressure: 64, meanPressureTarget: 65 })).toEqual([
      {
        word: 'not-now',
        words: 'critical care: mean pressure 64 mmHg is below the own target of 65',
        limit: 65,
        source: "the person's own target, by order",
      },
    ]);
    expect(judge({ meanPressure: 59 })[0]!.words).toBe('critical care: mean pressure 59 mmHg is 60 or less');
  });
  it('give each reason with its words, its limit and its source', () => {
    const all = judge({
      saturation: 80,
      oxygenFraction: 0.7,
      breathing: 35,
      endExpiratory: 12,
      meanPressure: 120,
      heartRate: 125,
      sedation: -2,
      confusedNotFollowing: true,
      temperature: 39,
      vasoactive: 'new-or-raised',
    });
    expect(all.map((r) => [r.words, r.limit])).toEqual([
      ['critical care: oxygen saturation 80 % is below 90 %', 90],
      ['critical care: oxygen fraction 0.7 is 0.6 or more', 0.6],
      ['critical care: breathing rate 35 is above 30', 30],
      ['critical care: end-expiratory pressure 12 cmH2O is 10 or more', 10],
      ['critical care: mean pressure 120 mmHg is above 100', 100],
      ['critical care: heart rate 125 is 120 or more', 120],
      ['critical care: sedation grade -2 is below -1', -1],
      ['critical care: confused and does not follow simple commands', null],
      ['critical care: temperature 39 °C is 38.5 or more', 38.5],
      ['critical care: vasoactive drug new or raised within 2 h', 2],
    ]);
    const more = judge({ heartRate: 135, sedation: 2, meanPressure: 61, vasoactive: 'steady' });
    expect(more.map((r) => [r.words, r.limit])).toEqual([
      ['critical care: heart rate 135 is 130 or more', 130],
      ['critical care: sedation grade 2 is above 1', 1],
      ['critical care: vasoactive drug running, ask by local policy', null],
    ]);
    const worst = (signs: Partial<CriticalCareSigns>) => judge(signs).map((r) => [r.words, r.limit]);
    expect(worst({ sedation: -4 })).toEqual([['critical care: sedation grade -4 is below -2', -2]]);
    expect(worst({ sedation: 4 })).toEqual([['critical care: sedation grade 4 is above 2', 2]]);
    expect(worst({ heartRate: 30 })).toEqual([['critical care: heart rate 30 is 40 or less', 40]]);
    expect(worst({ temperature: 39, activeCooling: true })).toEqual([
      ['critical care: temperature 39 °C is 38.5 or more, and is being cooled', 38.5],
    ]);
  });
  it('that were not taken say nothing', () => {
    expect(judge({})).toEqual([]);
  });
});
