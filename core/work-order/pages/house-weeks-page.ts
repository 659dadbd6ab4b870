import { dateWords } from '../../time/date-words.ts'
import type { WorkOrder } from '../document-types.ts'
import { roomDayKinds, roomDayLines, roomDayWords } from '../house-day.ts'
import { html, type Markup } from '../html-template.ts'
import type { RoomDay } from '../room-day.ts'
import { drawnHouse, pointsAttribute } from './drawn-house.ts'

/** The house from above, week by week; states are told apart by pattern and word. */
export function houseWeeksPage({ house, unitSystem }: WorkOrder): Markup {
  return html`<section class="sheet house-weeks">
<header class="head"><h2>The house from week to week</h2><p>As planned; each room with the day it is back.</p></header>
${patterns}
<p class="key">${roomDayKinds.map(
    (kind) =>
      html`<span class="tight"><svg width="8mm" height="4.4mm" viewBox="0 0 8 4.4" aria-hidden="true"><rect x="0.4" y="0.4" width="7.2" height="3.6" ${lookOf(kind)}/></svg> ${roomDayWords[kind]}</span> `,
  )}</p>
<div class="weeks">${house.days.map(
    ({ date, rooms }) => html`<figure><figcaption>${dateWords(date, unitSystem)}</figcaption>
${drawnHouse(house.picture, dateWords(date, unitSystem), (room) => {
  const day = rooms.get(room.setId)
  const look = lookOf(day?.kind ?? 'noWork')
  return {
    shape: html`<polygon points="${pointsAttribute(room.outline)}" ${look}/>`,
    lines: day !== undefined && room.setId === room.roomId ? roomDayLines(day, unitSystem) : [],
  }
})}</figure>`,
  )}</div>
</section>`
}

const patterns: Markup = html`<svg width="0" height="0" aria-hidden="true" style="position:absolute"><defs>
<pattern id="day-work" width="1.8" height="1.8" patternUnits="userSpaceOnUse"><path d="M0.4 0 V1.8" stroke="#23262b" stroke-width="0.2"/></pattern>
<pattern id="day-drying" width="2" height="2" patternUnits="userSpaceOnUse"><path d="M-0.2 0.2 L0.2 -0.2 M0 2 L2 0 M1.8 2.2 L2.2 1.8" stroke="#23262b" stroke-width="0.35"/></pattern>
<pattern id="day-closed" width="1.6" height="1.6" patternUnits="userSpaceOnUse"><circle cx="0.5" cy="0.5" r="0.2" fill="#23262b"/></pattern>
</defs></svg>`

function lookOf(kind: RoomDay['kind']): Markup {
  switch (kind) {
    case 'noWork':
    case 'notBegun':
      return html`fill="#fff" stroke="#23262b" stroke-width="0.25"`
    case 'inWork':
      return html`fill="url(#day-work)" stroke="#23262b" stroke-width="0.7"`
    case 'drying':
      return html`fill="url(#day-drying)" stroke="#23262b" stroke-width="0.4"`
    case 'closed':
      return html`fill="url(#day-closed)" stroke="#23262b" stroke-width="0.4"`
    case 'givenBack':
      return html`fill="#fff" stroke="#23262b" stroke-width="0.5" stroke-dasharray="1.4 0.9"`
    case 'ready':
      return html`fill="#e2e2e2" stroke="#23262b" stroke-width="0.5"`
  }
}
