import { html, type Markup } from '../html-template.ts'
import { framedLetter, marker } from '../plan-drawing.ts'
import type { WallDrawing } from '../room-sheet/sheet-types.ts'

/** Paper in mm: greatest width and height of a wall, and the room around it for its outline. */
const widest = 58
const highest = 26
const margin = 1

/** One wall square on, to its own scale, with its openings lettered and its findings numbered. */
export function wallDrawing(wall: WallDrawing): Markup {
  const scale = Math.max(wall.widthMm / widest, wall.heightMm / highest)
  const place = (value: number) => Number((value / scale + margin).toFixed(2))
  const width = Number((wall.widthMm / scale + 2 * margin).toFixed(2))
  const height = Number((wall.heightMm / scale + 2 * margin).toFixed(2))
  const outline = wall.outline.map(({ x, y }) => `${place(x)},${place(y)}`).join(' ')
  return html`<figure><svg class="plan" role="img" aria-label="${wall.name} seen from the room" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
<polygon points="${outline}" fill="#fff" stroke="#23262b" stroke-width="0.5" stroke-linejoin="miter"/>
${wall.openings.map(
  ({ from, to }) =>
    html`<rect x="${place(from.x)}" y="${place(from.y)}" width="${Number(((to.x - from.x) / scale).toFixed(2))}" height="${Number(((to.y - from.y) / scale).toFixed(2))}" fill="none" stroke="#23262b" stroke-width="0.3"/>`,
)}
${wall.openings.map(({ letter, from, to }) => framedLetter(letter, { x: place((from.x + to.x) / 2), y: place(to.y) - 3 }))}
${wall.markers.map(({ number, at }) => marker(number, { x: place(at.x), y: place(at.y) }))}
</svg><figcaption>${wall.name}</figcaption></figure>`
}
