/** A byte order mark: spreadsheet programs that would take the machine's own letters for the file's read UTF-8 then. */
const utf8Mark = '\ufeff'

/** Signs that begin a formula in a spreadsheet, their full-width forms too, behind any blanks; and the blanks that some strip first. */
const formulaStart = /^(?:\s*[=+\-@＝＋－＠]|[\t\r])/u

/**
 * Comma-separated text by RFC 4180, after a byte order mark: lines end in CRLF, the first names the columns, fields with a comma, a quote or a line break are
 * quoted and quotes doubled. Text that a spreadsheet would run as a formula gets an apostrophe in front (common practice); numbers
 * are never touched.
 */
export function csvText(
  columns: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
): string {
  const lines = [columns, ...rows].map((row) => row.map(csvField).join(','))
  return utf8Mark + lines.map((line) => `${line}\r\n`).join('')
}

function csvField(value: string | number | null): string {
  if (value === null) return ''
  if (typeof value === 'number') return String(value)
  const safe = formulaStart.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
