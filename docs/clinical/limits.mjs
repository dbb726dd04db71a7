import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { isLimit, limitsOf, table, title, value, words } from './markdown.mjs';

const limitRows = (group) =>
  limitsOf(group).map(([path, limit]) => [
    path.map(words).join(': '),
    value(limit.value),
    limit.source,
    limit.owner,
    limit.reviewBy,
  ]);

export function limits() {
  const lines = ['## Limits and validities', '', `Rules document version ${DEFAULT_RULES.version}.`, ''];
  for (const [group, all] of Object.entries(DEFAULT_RULES)) {
    if (typeof all !== 'object') continue;
    lines.push(`### ${title(words(group))}`, '');
    const own = Object.fromEntries(Object.entries(all).filter(([, one]) => isLimit(one)));
    const heads = ['limit', 'value', 'source', 'owner', 'review by'];
    if (Object.keys(own).length > 0) lines.push(...table(heads, limitRows(own)));
    for (const [name, inner] of Object.entries(all)) {
      if (isLimit(inner)) continue;
      lines.push(`${title(words(group))}, by ${words(name)}:`, '', ...table(heads, limitRows(inner)));
    }
  }
  return lines;
}
