import { goals, measures } from './clinical/activity.mjs';
import { earlyWarning } from './clinical/early-warning.mjs';
import { front, signatures } from './clinical/front.mjs';
import { limits } from './clinical/limits.mjs';
import { moving } from './clinical/moving.mjs';
import { rising } from './clinical/rising.mjs';
import { ruleIndex } from './clinical/rule-index.mjs';
import { start } from './clinical/start.mjs';
import { stagedCheck } from './clinical/staged-check.mjs';
import { toSign } from './clinical/to-sign.mjs';
import { who } from './clinical/who.mjs';

/** The rules a ward starts with, as Markdown, for a clinician to read and sign. */
export const clinicalRules = () =>
  [
    ...front(),
    ...stagedCheck(),
    ...start(),
    ...rising(),
    ...earlyWarning(),
    ...moving(),
    ...goals(),
    ...measures(),
    ...who(),
    ...limits(),
    ...ruleIndex(),
    ...toSign(),
    ...signatures(),
  ].join('\n');
