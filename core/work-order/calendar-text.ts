/** Pieces of an iCalendar file (RFC 5545); no calendar of ours in here. */

/** One `NAME:value` line, folded so that no line is longer than 75 octets (section 3.1), ended by CRLF. */
export function contentLine(name: string, value: string): string {
  return `${foldedLine(`${name}:${value}`)}\r\n`
}

/** Text values (section 3.3.11): backslash, semicolon, comma and line breaks escaped, other control characters dropped. */
export function calendarText(text: string): string {
  return (
    text
      .replaceAll('\\', '\\\\')
      .replaceAll(';', '\\;')
      .replaceAll(',', '\\,')
      .replace(/\r\n|\r|\n/g, '\\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are exactly the characters to drop
      .replace(/[\u0000-\u0008\u000a-\u001f\u007f]/g, '')
  )
}

/** Minutes since 1970 UTC as `20270329T121500Z` (section 3.3.5, form 2): needs no time zone record. */
export function calendarInstant(instant: number): string {
  const iso = new Date(instant * 60_000).toISOString()
  return `${iso.slice(0, 19).replaceAll(/[-:]/g, '')}Z`
}

/** Breaks between characters, never inside one; continuation lines start with a space that counts. */
function foldedLine(line: string): string {
  let folded = ''
  let octets = 0
  for (const letter of line) {
    const size = octetsOf(letter)
    if (octets + size > 75) {
      folded += '\r\n '
      octets = 1
    }
    folded += letter
    octets += size
  }
  return folded
}

/** Length in UTF-8. */
function octetsOf(letter: string): number {
  const code = letter.codePointAt(0) ?? 0
  if (code < 0x80) return 1
  if (code < 0x800) return 2
  return code < 0x10000 ? 3 : 4
}
