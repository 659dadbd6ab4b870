import type { WorkOrder } from '../document-types.ts'
import { type ColorMark, colorsByLetter, type HouseColors, type RoomColors } from '../house-colors.ts'
import { type HousePicture, type PictureRoom, wallBand } from '../house-picture.ts'
import { html, type Markup } from '../html-template.ts'
import { drawnHouse, pointsAttribute } from './drawn-house.ts'

/** Of a wall inside its line, and of the woodwork along it, in millimeters. */
const band = { wall: 3.4, woodwork: 1.2 }

/** For the client: the floors in the chosen colors. Letters say the same in black and white. */
export function houseColorsPage({ title, colors }: WorkOrder): Markup {
  const { house, picture } = colors
  return html`<section class="sheet house-colors">
<header class="head"><h2>The house in its colors</h2><p>${title}</p></header>
<p>Outer line: woodwork. Band along the walls: walls. Middle: ceiling. White with no letter: left as it is, or not chosen yet.</p>
${houseInColors(picture, house, 'The house from above in its colors')}
${colorLegend(house.marks)}
<p class="source">Colors on paper and on a screen differ from paint: decide by a sample on the wall, by day and by lamp light (common practice).</p>
</section>`
}

/** The floors of a picture, each room in its colors with the letters of them. */
export function houseInColors(picture: HousePicture, house: HouseColors, label: string): Markup {
  return drawnHouse(picture, label, (room) => {
    const own = house.rooms.get(room.roomId)
    return { shape: inColors(room, own), lines: own === undefined ? [] : colorsByLetter(own) }
  })
}

/** Every color with its letter and name. */
export function colorLegend(marks: HouseColors['marks']): Markup {
  return html`<ul class="colors">${marks.map(
    ({ letter, name, shown }) =>
      html`<li><svg width="9mm" height="5mm" viewBox="0 0 9 5" aria-hidden="true"><rect x="0.2" y="0.2" width="8.6" height="4.6" fill="${shown}" stroke="#23262b" stroke-width="0.25"/></svg> <b>${letter}</b> ${name}</li>`,
  )}</ul>`
}

function inColors(room: PictureRoom, colors: RoomColors | undefined): Markup {
  const points = pointsAttribute(room.outline)
  const clip = `color-clip-${room.roomId}`
  const wall = wallBand(room, band.wall)
  const inner = 2 * (wall + band.woodwork)
  const walls = room.walls.map(({ wallId, from, to }) => ({ from, to, own: colors?.walls.get(wallId) }))
  const line = (from: PictureRoom['outline'][number], to: typeof from, ink: string, width: number) =>
    html`<polyline points="${pointsAttribute([from, to])}" fill="none" stroke="${ink}" stroke-width="${width}"/>`
  return html`<clipPath id="${clip}"><polygon points="${points}"/></clipPath>
<polygon points="${points}" fill="${inkOf(colors?.ceiling)}"/>
<g clip-path="url(#${clip})">${walls.map(({ from, to }) => line(from, to, '#23262b', inner + 0.4))}${walls.map(({ from, to, own }) => line(from, to, inkOf(own?.upper), inner))}${walls.map(
    ({ from, to, own }) =>
      own?.lower === undefined ? null : line(from, to, inkOf(own.lower), wall + 2 * band.woodwork),
  )}
<polygon points="${points}" fill="none" stroke="#23262b" stroke-width="${2 * band.woodwork + 0.4}"/><polygon points="${points}" fill="none" stroke="${inkOf(colors?.woodwork)}" stroke-width="${2 * band.woodwork}"/></g>
<polygon points="${points}" fill="none" stroke="#23262b" stroke-width="0.4"/>`
}

function inkOf(mark: ColorMark | null | undefined): string {
  return mark?.shown ?? '#fff'
}
