/** One page of a PDF as the tests make it: size in points, how it is turned, what is drawn on it. */
export interface PdfPage {
  readonly width: number
  readonly height: number
  /** Degrees clockwise (ISO 32000-2, table 31, Rotate). */
  readonly rotate?: 0 | 90 | 180 | 270
  /** Points are so many times 1/72 in. */
  readonly userUnit?: number
  readonly content?: string
  /** An image named /Im, as dictionary entries and bytes. */
  readonly image?: { readonly entries: string; readonly bytes: Buffer }
}

/** The upper left quarter dark, as the page lies before it is turned. */
export function darkQuarter({ width, height }: Pick<PdfPage, 'width' | 'height'>): string {
  return `0.1 g 0 ${height / 2} ${width / 2} ${height / 2} re f`
}

/** A PDF file of these pages (ISO 32000-2, 7.5); `trailer` adds entries at its end. */
export function pdfOf(pages: readonly PdfPage[], trailer = ''): Buffer {
  const numbers = pages.map((_, index) => 3 + index * 3)
  const bodies: Buffer[] = [
    text('<< /Type /Catalog /Pages 2 0 R >>'),
    text(
      `<< /Type /Pages /Count ${pages.length} /Kids [${numbers.map((number) => `${number} 0 R`).join(' ')}] >>`,
    ),
    ...pages.flatMap((page, index) => pageBodies(page, numbers[index] ?? 0)),
  ]
  const parts: Buffer[] = [text('%PDF-1.7\n')]
  const places: number[] = []
  for (const [index, body] of bodies.entries()) {
    places.push(sizeOf(parts))
    parts.push(text(`${index + 1} 0 obj\n`), body, text('\nendobj\n'))
  }
  const start = sizeOf(parts)
  const rows = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('')
  parts.push(
    text(`xref\n0 ${bodies.length + 1}\n0000000000 65535 f \n${rows}`),
    text(`trailer\n<< /Size ${bodies.length + 1} /Root 1 0 R ${trailer} >>\nstartxref\n${start}\n%%EOF\n`),
  )
  return Buffer.concat(parts)
}

function pageBodies(page: PdfPage, number: number): readonly Buffer[] {
  const { width, height, rotate = 0, userUnit = 1, content = darkQuarter(page), image } = page
  const resources = image === undefined ? '' : `/XObject << /Im ${number + 2} 0 R >>`
  return [
    text(
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${width} ${height}] /Rotate ${rotate} /UserUnit ${userUnit} /Contents ${number + 1} 0 R /Resources << ${resources} >> >>`,
    ),
    stream('', text(content)),
    image === undefined
      ? text('null')
      : stream(`/Type /XObject /Subtype /Image ${image.entries}`, image.bytes),
  ]
}

function stream(entries: string, bytes: Buffer): Buffer {
  return Buffer.concat([
    text(`<< ${entries} /Length ${bytes.length} >>\nstream\n`),
    bytes,
    text('\nendstream'),
  ])
}

function text(words: string): Buffer {
  return Buffer.from(words, 'latin1')
}

function sizeOf(parts: readonly Buffer[]): number {
  return parts.reduce((total, part) => total + part.length, 0)
}
