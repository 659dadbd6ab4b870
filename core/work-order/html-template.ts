/** Text that is already HTML and is not escaped again. */
export interface Markup {
  readonly markup: string
}

type Piece = Markup | string | number | null | false | readonly Piece[]

/** `html` escapes every value that is not itself made by `html`; null and false leave nothing, lists follow one another. */
export function html(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  const markup = strings.reduce(
    (text, part, index) => text + (index === 0 ? '' : pieceText(pieces[index - 1] ?? null)) + part,
    '',
  )
  return { markup }
}

/** For text that is HTML by construction (a style sheet, a drawing); never for anything a person typed. */
export function asMarkup(text: string): Markup {
  return { markup: text }
}

/** Safe inside an element and inside a quoted attribute; control characters that HTML forbids are dropped. */
export function escapeHtml(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are exactly the characters to drop
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
      .replaceAll("'", '&#39;')
  )
}

/** A quoted CSS string: everything but plain letters, digits and spaces as a code point, so that no text can leave the sheet. */
export function cssString(text: string): string {
  const safe = [...text].map((letter) =>
    /[A-Za-z0-9 ]/.test(letter) ? letter : `\\${(letter.codePointAt(0) ?? 0xfffd).toString(16)} `,
  )
  return `"${safe.join('')}"`
}

function pieceText(piece: Piece): string {
  if (piece === null || piece === false) return ''
  if (typeof piece === 'number') return String(piece)
  if (typeof piece === 'string') return escapeHtml(piece)
  if (isMarkup(piece)) return piece.markup
  return piece.map(pieceText).join('')
}

function isMarkup(piece: Markup | readonly Piece[]): piece is Markup {
  return 'markup' in piece
}
