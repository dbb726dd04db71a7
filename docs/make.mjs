// Writes docs/clinical-rules.md from the rules' own documents, so that a clinician can read and sign
// them without reading code, and docs/authorisation.md from the policy document. `npm run docs`; a
// test fails when a file is not current.
import { writeFileSync } from 'node:fs';
import { authorisation } from './authorisation.mjs';
import { clinicalRules } from './clinical-rules.mjs';

writeFileSync(new URL('./clinical-rules.md', import.meta.url), clinicalRules());
writeFileSync(new URL('./authorisation.md', import.meta.url), authorisation());
