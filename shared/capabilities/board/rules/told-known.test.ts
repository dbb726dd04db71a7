/** What stands against a late entry, and what a few entries leave in force, as it was read before. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { KNOWN } from './told-known.testkit.ts';

heldAgainst(new URL('told-known.txt', import.meta.url), KNOWN);
