import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemKind } from '../values.ts';
import { examinationDue, monthsAfter } from './examination.ts';

const rules = DEFAULT_RULES.aids;
const due = (is: Partial<Parameters<typeof examinationDue>[0]>) =>
  examinationDue({ kind: 'sling', inspectionDue: null, ...is }, rules);

describe('COORD-4 when a piece is to be examined next', () => {
  // Derived from the six months of regulation 9 (LOLER 1998): the ends of short months are ours to say.
  it.each([
    ['2026-01-15', '2026-07-15'],
    ['2026-08-31', '2027-02-28'],
    ['2027-08-31', '2028-02-29'],
    ['2026-07-01', '2027-01-01'],
  ])('six months after %s is %s', (last, next) => {
    expect(monthsAfter(last, 6)).toBe(next);
    expect(due({ lastExamined: last })).toBe(next);
  });

  // UK law: equipment that lifts people, and its accessories, every six months (LOLER 1998 regulation 9; HSE HSIS4).
  it('is six months for what lifts people and for slings, with the law beside it', () => {
    for (const kind of ['floor-lift', 'ceiling-lift', 'standing-aid', 'sling'] as const) {
      expect(rules.examinationMonths[kind].value).toBe(6);
      expect(rules.examinationMonths[kind].source).toContain('regulation 9');
    }
  });
  it('says of every other interval, and of every ratio, that it is common practice', () => {
    for (const kind of itemKind.options.filter((k) => k === 'lateral-aid' || k === 'walking-aid'))
      expect(rules.examinationMonths[kind].source).toBe('common practice, no source');
    for (const ratio of [rules.peoplePerLift, rules.peoplePerStandingAid, rules.slingsPerPerson])
      expect(ratio.source).toBe('common practice, no source');
  });

  it('takes the earlier of a date told and the interval, and is not known without either', () => {
    expect(due({ lastExamined: '2026-01-15', inspectionDue: '2026-06-01' })).toBe('2026-06-01');
    expect(due({ lastExamined: '2026-01-15', inspectionDue: '2026-09-01' })).toBe('2026-07-15');
    expect(due({ inspectionDue: '2026-09-01' })).toBe('2026-09-01');
    expect(due({ lastExamined: null })).toBeNull();
  });
});
