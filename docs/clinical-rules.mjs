import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';

const words = (key) => key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
const row = (...cells) => `| ${cells.map((cell) => String(cell).replaceAll('|', '/')).join(' | ')} |`;

/** The rules a ward starts with, as Markdown. */
export function clinicalRules() {
  const lines = [
    '# The clinical rules a ward starts with',
    '',
    'Made from the documents the program runs (`npm run docs`). **Every value is a default until the ward’s clinician has',
    'read, changed where needed, and signed it.** It is not clinical advice; it does not replace prescribers’ orders, local',
    'policy or the judgement of the licensed clinician at the bedside, and it is not an alarm. "Common practice, no source"',
    'and "from memory" are said where no published source stands behind a value.',
    '',
    `## The staged check: ${DEFAULT_PROTOCOL.name}`,
    '',
    `Document \`${DEFAULT_PROTOCOL.id}\` version ${DEFAULT_PROTOCOL.version}. Source: ${DEFAULT_PROTOCOL.source}. Owner: ${DEFAULT_PROTOCOL.owner}. Review by ${DEFAULT_PROTOCOL.reviewBy}.`,
    'A part that is not met keeps the person at the stage before. Not tested neither lowers nor raises. Adults on general',
    'wards only; for everyone else the board shows CLINICIAN’S PLAN ONLY.',
    '',
  ];
  for (const [index, stage] of DEFAULT_PROTOCOL.stages.entries()) {
    lines.push(
      `### ${index + 1}. ${stage.word ?? 'May we start?'}`,
      '',
      stage.says,
      '',
      row('part', 'each side', 'a part not met', 'source'),
      row('---', '---', '---', '---'),
    );
    for (const part of stage.parts) {
      lines.push(
        row(
          part.says,
          part.sided ? 'yes' : 'no',
          {
            required: 'keeps the person below',
            'one-side': 'keeps the person below when on both sides',
            informs: 'informs the plan',
          }[part.gate],
          part.source,
        ),
      );
    }
    if (stage.securedBy.length)
      lines.push(
        '',
        `May be done secured: ${stage.securedBy.map((s) => s.replaceAll('-', ' ')).join(', ')}.${stage.firstTimeSecured ? ' The first time after surgery or bed rest it is.' : ''}`,
      );
    lines.push('');
  }
  lines.push('## Limits and validities', '', `Rules document version ${DEFAULT_RULES.version}.`, '');
  for (const [group, limits] of Object.entries(DEFAULT_RULES)) {
    if (typeof limits !== 'object') continue;
    lines.push(
      `### ${words(group)[0].toUpperCase()}${words(group).slice(1)}`,
      '',
      row('limit', 'value', 'source', 'owner', 'review by'),
      row('---', '---', '---', '---', '---'),
    );
    for (const [name, limit] of Object.entries(limits)) {
      lines.push(
        row(
          words(name),
          limit.value === true ? 'yes' : limit.value === false ? 'no' : limit.value,
          limit.source,
          limit.owner,
          limit.reviewBy,
        ),
      );
    }
    lines.push('');
  }
  return lines.join('\n');
}
