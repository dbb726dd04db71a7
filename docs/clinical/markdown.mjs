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
