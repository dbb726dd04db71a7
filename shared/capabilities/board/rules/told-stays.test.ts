/** How the board shows invented stays hour by hour, and what one entry more changes in it, as it was read before. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { MORE } from './told-entries.testkit.ts';
import { change, shown, STAYS, type History } from './told-stays.testkit.ts';

const WHEN = [3.2, 7, 13, 30];
const HOURS = [0.3, 1, 3.2, 7, 10, 12.5, 13.5, 14, 20, 26, 32, 50, 74];
/** What one thing more changes, at each of these hours; what it changed before is not told again. */
function changes(history: History, more: History): string {
  const already = new Set<string>();
  return WHEN.flatMap((t) => {
    const lines = change(shown(history, t), shown([...history, ...more], t)).filter((l) => !already.has(l));
    for (const line of lines) already.add(line);
    return [`at hour ${t}`, ...lines.map((line) => `  ${line}`)];
  }).join('\n');
}
const speaksOfCheck = (more: History) => JSON.stringify(more).includes('"check"');

heldAgainst(new URL('told-stays.txt', import.meta.url), [
  ...Object.entries(STAYS).flatMap(([who, history]) =>
    HOURS.map(
      (t, i) =>
        [
          `${who}, at hour ${t}`,
          () =>
            (i === 0 ? shown(history, t) : change(shown(history, HOURS[i - 1]!), shown(history, t))).join(
              '\n',
            ),
        ] as const,
    ),
  ),
  ...Object.entries(STAYS).flatMap(([who, history], i) =>
    MORE.filter(([, more], j) => i === 0 || (j % 3 === i && !speaksOfCheck(more))).map(
      ([said, more]) => [`${who}; ${said}`, () => changes(history, more)] as const,
    ),
  ),
]);
