import type { ScreenPoint } from '../screen-point.ts'
import type { Pen } from './pen.ts'

interface Lettering {
  readonly text: string
  /** Where the line stands, by its middle in height and by `align` across. */
  readonly at: ScreenPoint
  readonly face: string
  /** Height in pixels. */
  readonly size: number
  readonly weight?: 'normal' | 'bold' | 600
  readonly color: string
  readonly align?: 'left' | 'center' | 'right'
  /** The color of a rim that keeps lines off the letters, as they are broken round the lettering of a drawn plan. */
  readonly rim?: string
}

/** Pixels from a line's middle down to the foot of its letters, by font. */
const feet = new Map<string, number>()

export function letter(pen: Pen, { text, at, color, align = 'center', rim, ...font }: Lettering): void {
  const top = at.top + footOf(pen, font)
  pen.textAlign = align
  if (rim !== undefined) {
    pen.strokeStyle = rim
    pen.lineWidth = 5
    pen.lineJoin = 'round'
    pen.setLineDash([])
    pen.strokeText(text, at.left, top)
    pen.lineJoin = 'miter'
  }
  pen.fillStyle = color
  pen.fillText(text, at.left, top)
}

/** Draws with the sheet set to a place and turned there (degrees clockwise). */
export function turned(pen: Pen, at: ScreenPoint, degrees: number, draw: () => void): void {
  pen.save()
  pen.translate(at.left, at.top)
  pen.rotate((degrees * Math.PI) / 180)
  draw()
  pen.restore()
}

type Font = Pick<Lettering, 'face' | 'size' | 'weight'>

/** Takes the font, and measures it the first time. */
function footOf(pen: Pen, font: Font): number {
  const name = takeFont(pen, font)
  const known = feet.get(name)
  if (known !== undefined) return known
  const { fontBoundingBoxAscent, fontBoundingBoxDescent } = pen.measureText('M')
  const foot = (fontBoundingBoxAscent - fontBoundingBoxDescent) / 2
  feet.set(name, foot)
  return foot
}

function takeFont(pen: Pen, { face, size, weight = 'normal' }: Font): string {
  const name = `${weight} ${size}px ${face}`
  pen.font = name
  return name
}

/** How wide texts are in a font, pixels. */
export function widthIn(pen: Pen, font: Font): (text: string) => number {
  takeFont(pen, font)
  return (text) => pen.measureText(text).width
}

/** One line; what does not fit is left off behind three dots. */
export function cutShort(text: string, width: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= width) return text
  const letters = [...text]
  while (letters.length > 0 && widthOf(`${letters.join('')}…`) > width) letters.pop()
  return letters.length === 0 ? '' : `${letters.join('')}…`
}

/** Lines no wider than `width`, broken at spaces and behind dashes; a word that is wider stands alone. */
export function wrapped(text: string, width: number, widthOf: (text: string) => number): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.match(/[^\s-]*-|\S+|\s+/g) ?? []) {
    if (line !== '' && widthOf((line + word).trimEnd()) > width) {
      lines.push(line.trimEnd())
      line = word.trimStart()
    } else line += word
  }
  return line === '' ? lines : [...lines, line]
}
