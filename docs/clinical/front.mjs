import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { fence } from '@footboard/shared/capabilities/stays/values';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { words } from './markdown.mjs';

/** What the software is not, and for whom it says nothing. */
export const front = () => [
  '# The clinical rules a ward starts with',
  '',
  'Made from the documents and tables the program runs (`npm run docs`). **Every value is a default until the ward’s',
  'clinician has read it, changed it where needed, and signed it.** "Common practice, no source" and "from memory" are',
  'said where no published source was read; all of them are listed at the end.',
  '',
  '## What this software is not',
  '',
  '- It is not clinical advice and not a substitute for judgement. Prescribers’ orders, local policy and the licensed',
  '  clinician at the bedside come first.',
  '- It is not an alarm. Nothing sounds or flashes; nobody may rely on it to be called.',
  '- It is not a measuring instrument and keeps no score of a person. A tier is a summary; no table leads from a tier to',
  '  an aid.',
  '- It does not decide that somebody may go alone. A nurse or therapist does.',
  '- It does not replace the maker’s instructions, the safe working load or the check of any equipment before use.',
  '- What was not recorded is shown as not recorded. It never counts as normal, and never as zero.',
  '',
  '## For whom it says nothing',
  '',
  'The staged check is for adults on general wards. For these people the board shows CLINICIAN’S PLAN ONLY with the text',
  'the clinician entered, and no tier, plan, due time or goal of its own:',
  '',
  ...fence.options.map((one) => `- ${words(one)}`),
  '',
  'At the end of life a comfort plan applies: no tier, no due time, no goal, no rank.',
  '',
];

/** The block to sign. */
export const signatures = () => [
  '## Signature',
  '',
  `Protocol \`${DEFAULT_PROTOCOL.id}\` version ${DEFAULT_PROTOCOL.version}; rules document version ${DEFAULT_RULES.version}.`,
  'By signing, the ward says that it has read these rules, changed what it does not agree with, and will read them again',
  'by the review date. A changed document is a new version and is signed again.',
  '',
  '| name | role | date | version | what was changed |',
  '| --- | --- | --- | --- | --- |',
  '|  | responsible clinician |  |  |  |',
  '|  | nurse in charge |  |  |  |',
  '|  | therapist |  |  |  |',
  '|  | patient handling coordinator |  |  |  |',
  '',
];
