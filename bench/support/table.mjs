const show = (value) => {
  if (value === undefined || value === null) return '';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (typeof value === 'number')
    return Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(3)));
  return String(value);
};

/** Rows of one shape as a Markdown table; numbers to three figures. */
export function table(rows) {
  if (!rows || rows.length === 0) return '';
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [columns, columns.map(() => '---'), ...rows.map((row) => columns.map((column) => show(row[column])))]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');
}

export const median = (values) => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
};

export const percentile = (values, part) => {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)];
};
