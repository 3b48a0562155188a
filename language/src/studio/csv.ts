/** Comma-separated values by RFC 4180, safe to open in a spreadsheet. */

/**
 * One field. Text that a spreadsheet would run as a formula gets an apostrophe in front, after which it is only text;
 * numbers stay numbers.
 */
function field(value: string | number | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  // Spreadsheets skip white space in front of the sign, so it is looked for behind it too.
  const text = /^[\s\u00a0]*[=+\-@\t\r|%]/.test(value) ? `'${value}` : value;
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows with CR LF after each, as the standard wants. */
export const csv = (rows: readonly (readonly (string | number | undefined)[])[]): string =>
  rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
