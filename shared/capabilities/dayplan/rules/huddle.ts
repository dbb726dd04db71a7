import type { EpochMs } from '../../../kernel/times.ts';
import type { HuddlePage } from '../../../wire/http.ts';
import type { BoardView } from '../../board/view.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';

export function huddleOf(
  _board: BoardView,
  _t: EpochMs,
  _calendar: WardCalendar,
  _rules: RulesDocument = DEFAULT_RULES,
): Omit<HuddlePage, 'ward' | 'position' | 'at'> {
  throw new Error('signature only');
}
