// Times in milliseconds and what is made of them.

export const milliseconds = async (action) => {
  const since = process.hrtime.bigint();
  await action();
  return Number(process.hrtime.bigint() - since) / 1e6;
};

/** The value below which a share of the samples lies: the nearest rank. */
export function quantile(samples, share) {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
}

export const summary = (samples) => ({ p50: quantile(samples, 0.5), p95: quantile(samples, 0.95) });

/** Three significant digits. */
export const short = (value) => Number(value.toPrecision(3)).toString();

/** A table of text, the first row being its head. */
export function table(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) => row.map((cell, column) => (column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]))).join('  ')).join('\n');
}
