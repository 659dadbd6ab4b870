import { dateWords } from '../../time/date-words.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import type { WorkOrder } from '../document-types.ts'
import { readyWords, stretchWords } from '../family-page.ts'
import type { FamilyRoom } from '../family-types.ts'
import { html, type Markup } from '../html-template.ts'
import { familyType } from './family-fit.ts'

/** For the client's refrigerator: one page in large type. */
export function familySheet(order: WorkOrder): Markup {
  const { family, unitSystem } = order
  return html`<section class="sheet family type-${familyType(family, unitSystem)}">
<header class="head"><h2>When the painters are where</h2><p>${dateWords(family.startsOn, unitSystem)} to ${dateWords(family.finishesOn, unitSystem)}. The plan may move; the crew tells you the evening before.</p></header>
<table><caption class="unseen">Rooms</caption>
<thead><tr><th scope="col">Room</th><th scope="col">In work</th><th scope="col">Ready again</th><th scope="col">Take out before</th></tr></thead>
<tbody>${family.rooms.map((room) => roomRow(room, unitSystem))}</tbody></table>
<p>Everywhere: curtains, blinds and pictures down. Heavy furniture stays; the crew moves it to the middle and covers it.</p>
<h3>Keep children and pets away from</h3>
<ul>${family.keepAway.map((text) => html`<li>${text}</li>`)}</ul>
<p>Ready again means dry to the touch. Paint hardens for some weeks: no tape, no washing, nothing leaned against it until then.</p>
<p class="call"><span class="what">Whom to call:</span> <span class="blank"></span> <span class="what">Phone:</span> <span class="blank"></span></p>
</section>`
}

function roomRow(room: FamilyRoom, system: LengthUnitSystem): Markup {
  const stretches = room.stretches.map((stretch) => stretchWords(stretch, system))
  return html`<tr><th scope="row">${room.name}</th><td>${stretches.length === 0 ? 'not planned yet' : stretches.join(', ')}</td>
<td class="what tight">${readyWords(room, system)}</td><td>${room.moveBefore.join('; ')}</td></tr>`
}
