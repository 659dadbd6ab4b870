import type { WallElevation } from '../../quantities/elevation.ts'
import type { WorkOrder } from '../document-types.ts'
import type { HouseColors } from '../house-colors.ts'
import { html, type Markup } from '../html-template.ts'
import { type RoomWalls, wallGlass, wallLetters, wallOnDrawing, wallShapes } from '../wall-colors.ts'
import { colorLegend } from './house-colors-page.ts'

/** The longest wall of the house is drawn as wide, in millimeters; four stand side by side. */
const widest = 45

/** For the client: every wall straight on in the chosen colors, room by room, all to one scale. */
export function wallColorsPage({ title, colors }: WorkOrder): Markup {
  const longest = Math.max(1, ...colors.walls.flatMap(({ walls }) => walls.map(({ length }) => length)))
  return html`<section class="sheet house-colors">
<header class="head"><h2>Walls in their colors</h2><p>${title}</p></header>
${colorLegend(colors.house.marks)}
${colors.walls.map((room) => roomInColors(room, colors.house, widest / longest))}
</section>`
}

function roomInColors(room: RoomWalls, colors: HouseColors, scale: number): Markup {
  return html`<div class="color-room"><h3>${room.name}</h3><div class="color-walls">${room.walls.map((wall) =>
    wallInColors(room, wall, colors, scale),
  )}</div></div>`
}

function wallInColors(
  { roomId }: RoomWalls,
  wall: WallElevation,
  colors: HouseColors,
  scale: number,
): Markup {
  const { width, height, points } = wallOnDrawing(wall, scale, 0.5, 2)
  const [wide, high] = [width.toFixed(2), height.toFixed(2)]
  return html`<figure><svg role="img" aria-label="${wall.name} in its colors" width="${wide}mm" height="${high}mm" viewBox="0 0 ${wide} ${high}">${wallShapes(
    roomId,
    wall,
  ).map(
    ({ surface, line }) =>
      html`<polygon points="${points(line)}" fill="${colors.on(surface)?.shown ?? '#fff'}" stroke="#23262b" stroke-width="0.25"/>`,
  )}${wallGlass(wall).map(
    (line) => html`<polygon points="${points(line)}" fill="#fff" stroke="#23262b" stroke-width="0.15"/>`,
  )}</svg><figcaption>${wallLetters(wall, colors)}</figcaption></figure>`
}
