/** The sheet of a session, opened for one person. */
import { stayRow } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import SessionForm from './SessionForm.vue';

export const given = (view = stayRow()) => bench(SessionForm, { stay: 's1', view });
