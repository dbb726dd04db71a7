import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { row, value, words } from './markdown.mjs';

const GATES = {
  required: 'keeps the person below',
  'one-side': 'keeps the person below when on both sides',
  informs: 'informs the plan',
};

export function stagedCheck() {
  const p = DEFAULT_PROTOCOL;
  const lines = [
    `## The staged check: ${p.name}`,
    '',
    `Document \`${p.id}\` version ${p.version}. Source: ${p.source}. Owner: ${p.owner}. Review by ${p.reviewBy}.`,
    `A part that is not met keeps the person at the stage before; with nothing cleared the word is ${p.lowestWord}. Not`,
    'tested neither lowers nor raises. A ward may publish a protocol of its own; it runs through the same rules.',
    '',
  ];
  for (const [index, stage] of p.stages.entries()) {
    lines.push(`### ${index + 1}. ${stage.word ?? 'May we start?'}`, '', stage.says, '');
    lines.push(
      row('part', 'each side', 'a part not met', 'source'),
      row('---', '---', '---', '---'),
      ...stage.parts.map((part) => row(part.says, value(part.sided), GATES[part.gate], part.source)),
      '',
    );
    const notes = [
      stage.securedBy.length > 0 && `May be done secured: ${stage.securedBy.map(words).join(', ')}.`,
      stage.firstTimeSecured && 'The first time after surgery or bed rest it is.',
      stage.symptomStops && 'A symptom during it means that it is not cleared.',
      stage.oneLegRoute &&
        'May be met on one leg with both arms pushing; what follows then needs a therapist.',
    ].filter(Boolean);
    if (notes.length > 0) lines.push(notes.join(' '), '');
  }
  const set = p.pressureSet;
  lines.push(
    '### The pressure set',
    '',
    `${set.lying ? 'Lying, then' : 'From'} standing at ${set.standingMinutes.join(' and ')} min, each within ${set.within} min. Source: ${set.source}.`,
    'A reading that is missing is named and never taken as normal.',
    '',
  );
  return lines;
}
