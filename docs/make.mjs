// Writes docs/clinical-rules.md from the rules' own documents, so that a clinician can read and sign
// them without reading code. `npm run docs`; a test fails when the file is not current.
import { writeFileSync } from 'node:fs';
import { clinicalRules } from './clinical-rules.mjs';

writeFileSync(new URL('./clinical-rules.md', import.meta.url), clinicalRules());
