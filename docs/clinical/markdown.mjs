/** Small pieces of Markdown. */
export const row = (...cells) => `| ${cells.map((cell) => String(cell).replaceAll('|', '/')).join(' | ')} |`;

export const table = (heads, rows) => [
  row(...heads),
  row(...heads.map(() => '---')),
  ...rows.map((r) => row(...r)),
  '',
];

/** "systolicBelow" as "systolic below", "new-confusion" as "new confusion". */
export const words = (key) =>
  key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll('-', ' ');

export const title = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** A limit's value as a person reads it. */
export function value(of) {
  if (of === true) return 'yes';
  if (of === false) return 'no';
  if (of === null) return 'none set: before the next move';
  if (Array.isArray(of)) return of.map(value).join(', ');
  return String(of);
}

export const isLimit = (of) => typeof of === 'object' && of !== null && 'value' in of && 'source' in of;

/** Every limit of a rules document with where it stands: [["start", "systolicBelow"], limit]. */
export function limitsOf(group, path = []) {
  return Object.entries(group).flatMap(([key, one]) => {
    if (isLimit(one)) return [[[...path, key], one]];
    return typeof one === 'object' && one !== null ? limitsOf(one, [...path, key]) : [];
  });
}

/** The stretches of a scale on which `answerOf` says the same: [{ says: "up to 89", answer }]. */
export function bands(from, to, step, answerOf) {
  const out = [];
  const count = Math.round((to - from) / step);
  const numberAt = (i) => Number((from + i * step).toFixed(2));
  for (let i = 0; i <= count; i++) {
    const answer = answerOf(numberAt(i));
    const last = out.at(-1);
    if (last?.answer === answer) last.high = i;
    else out.push({ low: i, high: i, answer });
  }
  return out.map(({ low, high, answer }) => {
    const [first, end] = [numberAt(low), numberAt(high)];
    if (low === 0 && high === count) return { says: 'any', answer };
    if (low === 0) return { says: `up to ${end}`, answer };
    if (high === count) return { says: `from ${first}`, answer };
    return { says: first === end ? `${first}` : `${first} to ${end}`, answer };
  });
}
