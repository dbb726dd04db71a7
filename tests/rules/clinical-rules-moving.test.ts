import { describe, expect, it } from 'vitest';
import { BANDS } from '@footboard/shared/capabilities/assessments/rules/news2-chart';
import {
  CONFIRM_ANSWERS,
  NEEDS_AS_FAR,
  NEEDS_PRESSURE_SET,
} from '@footboard/shared/capabilities/orders/rules/triggers';
import { triggerKind } from '@footboard/shared/capabilities/orders/values';
import { attachmentKind } from '@footboard/shared/capabilities/stays/values';
// @ts-expect-error a plain script without types
import { clinicalRules } from '../../docs/clinical-rules.mjs';
// @ts-expect-error a plain script without types
import { words } from '../../docs/clinical/markdown.mjs';

const made: string = clinicalRules();
const under = (heading: string): string => made.split(`\n### ${heading}\n`)[1]?.split('\n### ')[0] ?? '';
const lines = (heading: string, start: string) =>
  under(heading)
    .split('\n')
    .filter((line) => line.startsWith(start));

describe('how the person is moved, as a clinician reads it', () => {
  it('says what to do with a person nobody has checked: two and a sling lift, no standing', () => {
    expect(under('Not known here')).toContain('CHECK BEFORE MOVING');
    expect(lines('Not known here', '| bed chair |')).toEqual([
      '| bed chair | two, sling lift | three or more, bariatric lift | three or more, bariatric lift | two, sling lift |',
    ]);
    expect(lines('Not known here', '| walk | HOLD')).toHaveLength(1);
  });

  it('says that the body mass index is not known, and what an unknown weight means', () => {
    expect(under('Weight')).toContain('body mass index is not known to the program');
    expect(lines('Weight', '| bed chair |')[0]).toContain('three or more, bariatric lift');
  });

  it('has every kind of attachment with the people more', () => {
    const kinds = attachmentKind.options.map((kind) => `| ${words(kind)} | `);
    expect(kinds.filter((kind) => !under('Attachments').includes(kind))).toEqual([]);
    expect(lines('Attachments', '| chest drain | 1 |')).toHaveLength(1);
  });

  it.each([
    ['First time up since surgery or bed rest', 'two, none'],
    ['First time up since surgery or bed rest', 'Chair behind'],
    ['Pressure drop on rising', 'one more person'],
    ['At night', 'of a sedative: one more person'],
    ['Precautions', 'turn in one line, two people'],
    ['Precautions', 'ask which sling before lifting'],
    ['Precautions', '| sternum | bears part | bed chair, toilet | one, standing aid | two, sling lift |'],
    ['Brace', 'Brace on before getting up'],
    ['Spine or pelvis in doubt', 'turn in one line, three people'],
  ])('tells under "%s": %s', (heading, says) => {
    expect(under(heading)).toContain(says);
  });

  it('says of each trigger what answers it', () => {
    const wrong = triggerKind.options.filter((kind) => {
      const [line = ''] = lines('What a trigger does until someone has looked', `| ${words(kind)} | `);
      return (
        line.includes('confirm') !== CONFIRM_ANSWERS.has(kind) ||
        line.includes('pressure set') !== NEEDS_PRESSURE_SET.has(kind) ||
        line.includes('as far as what stands cleared') !== NEEDS_AS_FAR.has(kind)
      );
    });
    expect(wrong).toEqual([]);
  });
});

it('the bands of the early-warning score stand with what each asks for', () => {
  expect(Object.values(BANDS).filter(({ asks }) => !made.includes(`| ${asks} |`))).toEqual([]);
});

it('a walking measure reads with its warnings, and says where there is no norm', () => {
  const read = under('How a measure reads');
  const wanted = [
    'No norm: walked with a turn',
    'No norm: age and sex not given',
    'after a stroke (from memory)',
  ];
  expect(wanted.filter((one) => !read.includes(one))).toEqual([]);
});
