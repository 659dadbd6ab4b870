import { formatMinutes } from '../../units/duration.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { momentWords, spanWords } from '../date-words.ts'
import type { RoomSheet, StepLine } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { drawingScale, planDrawing, unlabelledWalls } from '../plan-drawing.ts'
import { placeInSentence } from '../surface-words.ts'
import { viewingRule } from '../viewing-rule.ts'
import { holdList } from './hold-list.ts'

/** Everything one person needs in one room, in the order it is needed. */
export function roomPage(room: RoomSheet, system: LengthUnitSystem, pageName: string): Markup {
  return html`<section class="sheet ${pageName}">
<header class="head"><h2>${room.name}</h2><p>${room.storey}</p></header>
${datesBlock(room, system)}
${holds(room)}
<div class="drawn">${drawing(room, system)}<div>${foundTable(room)}${quantitiesTable(room)}</div></div>
${room.note === '' ? null : html`<p>${room.note}</p>`}
${stepsTable(room, system)}
${cautions(room)}
${register(room)}
${signOff()}
</section>`
}

function datesBlock({ dates }: RoomSheet, system: LengthUnitSystem): Markup {
  const when = (moment: string | null) => (moment === null ? 'not planned' : momentWords(moment, system))
  return html`<dl class="block">
<div><dt>Starts</dt><dd>${when(dates.startsAt)}</dd></div>
<div><dt>Work ends</dt><dd>${when(dates.endsAt)}</dd></div>
<div><dt>Free, dry to the touch</dt><dd>${when(dates.freeAt)}</dd></div>
${dates.promisedBy === null ? null : html`<div><dt>Promised by</dt><dd>${when(dates.promisedBy)}</dd></div>`}
<div><dt>Person-hours</dt><dd>${formatMinutes(dates.minutes)}</dd></div>
</dl>`
}

function holds(room: RoomSheet): Markup | null {
  if (room.holds.length + room.notices.length === 0) return null
  return html`<div class="stop">${holdList(room.holds)}${room.notices.map(
    (notice) => html`<p>${notice.hold ? html`<strong>Wait: </strong>` : null}${notice.sentence}</p>`,
  )}</div>`
}

function drawing(room: RoomSheet, system: LengthUnitSystem): Markup {
  const listed = unlabelledWalls(room.plan, system).map((wall) => `${wall.letter} ${wall.length}`)
  const markers = room.plan.markers.length > 0 ? ' Numbers: what was found.' : ''
  return html`<figure>${planDrawing(room.plan, room.name, system)}
<figcaption>Plan at the finished face, 1 : ${drawingScale(room.plan, system)} at full size.${markers}${listed.length === 0 ? '' : ` Walls ${listed.join(' · ')}.`}</figcaption></figure>`
}

function foundTable(room: RoomSheet): Markup {
  if (room.found.length === 0)
    return html`<h3>What was found</h3><p>Nothing was written down for this room.</p>`
  return html`<table><caption>What was found</caption>
<thead><tr><th>#</th><th>What</th><th>Where</th><th>How much</th></tr></thead>
<tbody>${room.found.map(
    (
      line,
    ) => html`<tr><td>${line.number}</td><td>${line.what}${line.note === '' ? null : html`<p class="source">${line.note}</p>`}</td>
<td>${line.where}</td><td>${line.amount}</td></tr>`,
  )}</tbody></table>`
}

function quantitiesTable(room: RoomSheet): Markup | null {
  if (room.quantities.length === 0) return null
  return html`<table class="net"><caption>Net figures</caption>
<thead><tr><th>Surface</th><th class="n">Net area</th><th class="n">Length</th><th class="n">Cutting in</th><th class="n">Glass edge</th><th class="n">Pieces</th></tr></thead>
<tbody>${room.quantities.map(
    (
      line,
    ) => html`<tr><td>${line.surfaceClass}</td><td class="n">${line.netArea}</td><td class="n">${line.length}</td>
<td class="n">${line.cuttingIn}</td><td class="n">${line.glassPerimeter}</td><td class="n">${line.count}</td></tr>`,
  )}</tbody></table>`
}

function stepsTable(room: RoomSheet, system: LengthUnitSystem): Markup {
  return html`<table class="steps"><caption>Steps in order</caption>
<thead><tr><th>Done</th><th>#</th><th>Step</th><th>Product, colour, sheen</th><th>Amount</th><th class="n">Takes</th><th class="n">Person-time</th></tr></thead>
${room.steps.map((step) => stepRows(step, system))}</table>`
}

/** What to do on one line, and below it, as wide as the page, when, by whom and why. */
function stepRows(step: StepLine, system: LengthUnitSystem): Markup {
  const notes = stepNotes(step, system)
  return html`<tbody class="step"><tr><td><span class="box"></span></td><td>${step.number}</td>
<td><span class="what">${step.what}</span>, ${placeInSentence(step.where)}${step.daily ? html` <em>each working day</em>` : null}</td>
<td>${step.material}</td><td>${step.amounts.map((text, index) => html`${index === 0 ? null : ', '}<span class="tight">${text}</span>`)}</td><td class="n">${step.volume}</td><td class="n">${formatMinutes(step.minutes)}</td></tr>
${notes.length === 0 ? null : html`<tr><td colspan="2"></td><td colspan="5" class="notes">${notes}</td></tr>`}</tbody>`
}

function stepNotes(step: StepLine, system: LengthUnitSystem): readonly Markup[] {
  return [
    ...plannedNote(step, system),
    ...waitNotes(step, system),
    ...step.reasons.map((because) => html`<span class="why">${because.reason}</span> `),
    ...(step.reasonsAt.length === 0
      ? []
      : [html`<span class="why">as for step ${step.reasonsAt.join(', ')}</span> `]),
    ...(step.cautions.length === 0
      ? []
      : [html`<span class="risk tight">see caution ${step.cautions.join(', ')}</span>`]),
  ]
}

function plannedNote(step: StepLine, system: LengthUnitSystem): readonly Markup[] {
  if (step.startsAt === null || step.endsAt === null) return []
  const people = step.people.length === 0 ? '' : `, ${step.people.join(' and ')}`
  return [html`<span>${spanWords(step.startsAt, step.endsAt, system)}${people}</span> `]
}

function waitNotes(step: StepLine, system: LengthUnitSystem): readonly Markup[] {
  return [
    ...(step.notBefore === null
      ? []
      : [
          html`<span class="wait">not before ${momentWords(step.notBefore.at, system)} (as planned): ${step.notBefore.reason}</span> `,
        ]),
    ...(step.notAfter === null
      ? []
      : [
          html`<span class="wait">no later than ${momentWords(step.notAfter.at, system)} (as planned): ${step.notAfter.reason}</span> `,
        ]),
  ]
}

function cautions(room: RoomSheet): Markup | null {
  if (room.cautions.length === 0) return null
  return html`<section><h3>Cautions</h3><ol>${room.cautions.map(
    (caution) => html`<li>${caution.text}</li>`,
  )}</ol></section>`
}

function register(room: RoomSheet): Markup | null {
  if (room.register.length === 0) return null
  return html`<table><caption>Register of what is in the way and stays</caption>
<thead><tr><th>What</th><th>Where</th><th class="n">How many</th><th>What to do</th><th>Off or covered</th><th>Back and tried</th><th>By</th></tr></thead>
<tbody>${room.register.map(
    (
      line,
    ) => html`<tr><td>${line.name}${line.wired ? html` <em>wired</em>` : null}</td><td>${line.where}</td><td class="n">${line.count}</td><td>${line.handling}</td>
<td><span class="box"></span></td><td><span class="box"></span></td><td></td></tr>`,
  )}</tbody></table>`
}

function signOff(): Markup {
  return html`<div class="keep"><h3>Sign-off</h3><p>${viewingRule.text}</p>
<div class="sign"><div>Looked over by, date</div><div>Accepted by, date</div></div></div>`
}
