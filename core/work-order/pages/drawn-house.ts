import { fittedLines, type HousePicture, type PictureOpening, type PictureRoom } from '../house-picture.ts'
import { html, type Markup } from '../html-template.ts'
import type { PlanPoint } from '../room-plan.ts'

/** Of the type in a room, in millimeters. */
const textSize = 2.9

interface DrawnRoom {
  readonly shape: Markup
  /** Below the name, as far as they fit. */
  readonly lines: readonly string[]
}

/** All floors of a house on paper, each room as `drawn` says. */
export function drawnHouse(
  picture: HousePicture,
  label: string,
  drawn: (room: PictureRoom) => DrawnRoom,
): Markup {
  const [width, height] = [two(picture.width), two(picture.height)]
  const rooms = picture.rooms.map((room) => ({ room, ...drawn(room) }))
  return html`<svg role="img" aria-label="${label}" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
${picture.floors.map(({ name, left, top }) => html`<text x="${two(left)}" y="${two(top + 2.6)}" font-size="2.6">${name}</text>`)}
${rooms.map(({ shape }) => shape)}
${picture.openings.map(opening)}
${rooms.map(({ room, lines }) => words(room, lines))}
</svg>`
}

/** For `points` of an SVG shape, to two places. */
export function pointsAttribute(outline: readonly PlanPoint[]): string {
  return outline.map(({ x, y }) => `${two(x)},${two(y)}`).join(' ')
}

function words(room: PictureRoom, below: readonly string[]): Markup {
  const { size, lines, isTurned } = fittedLines(room, below, textSize)
  const { x } = room.label
  const y = isTurned ? room.label.upright.y : room.label.y
  const top = y - ((lines.length - 1) * size * 1.2) / 2
  const turn = isTurned ? html` transform="rotate(-90 ${two(x)} ${two(y)})"` : null
  return html`<g text-anchor="middle" dominant-baseline="central" font-size="${two(size)}" paint-order="stroke" stroke="#fff" stroke-width="0.9" stroke-linejoin="round"${turn}>${lines.map(
    (line, index) =>
      html`<text x="${two(x)}" y="${two(top + index * size * 1.2)}"${line === room.name ? html` font-weight="600"` : null}>${line}</text>`,
  )}</g>`
}

function opening({ kind, from, to }: PictureOpening): Markup {
  const ink = kind === 'window' ? '#999' : kind === 'door' || kind === 'casedOpening' ? '#fff' : '#23262b'
  return html`<line x1="${two(from.x)}" y1="${two(from.y)}" x2="${two(to.x)}" y2="${two(to.y)}" stroke="${ink}" stroke-width="0.8"/>`
}

function two(value: number): number {
  return Number(value.toFixed(2))
}
