import { dateWordsWithYear } from '../../time/date-words.ts'
import type { DayChore, HalfDayWork, PersonDay, SiteDay, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { mergedCans } from '../site-days.ts'
import { dayCautions } from './day-cautions.ts'

/** One day of the whole crew on the upper half of a page. */
export function todayPage(order: WorkOrder, day: SiteDay): Markup {
  const cans = mergedCans(day.people.map((each) => each.cans))
  return html`<section class="sheet today">
<header class="head"><h2>Today, ${dateWordsWithYear(day.date, order.unitSystem)}</h2><p>${order.title}</p></header>
<table><caption class="unseen">Who does what</caption>
<thead><tr><th scope="col">Who</th><th scope="col">Morning</th><th scope="col">Afternoon</th></tr></thead>
<tbody>${day.people.map(personRow)}</tbody></table>
<p class="bring"><span class="what">Cans to bring:</span> ${cans.length === 0 ? 'none' : cans.map(({ what }) => html`<span class="can"><span class="box"></span> ${what}</span> `)}</p>
${chores(day)}
${dayCautions(day.people)}
</section>`
}

function personRow(person: PersonDay): Markup {
  return html`<tr><th scope="row">${person.name}</th><td>${works(person.morning)}</td><td>${works(person.afternoon)}</td></tr>`
}

/** One owner for the whole house. */
function chores(day: SiteDay): Markup | null {
  const owner = day.people.find(({ crewMemberId }) => crewMemberId === day.choresOwner)
  if (owner === undefined) return null
  return html`<p><span class="what">${owner.name} sees to it:</span>${day.chores.map(choreBoxes)}</p>`
}

function choreBoxes({ kind, roomNames }: DayChore): Markup {
  const rooms = roomNames.join(', ')
  return kind === 'alarms'
    ? html` <span class="box"></span> alarms covered <span class="box"></span> alarms uncovered and tested: ${rooms}.`
    : html` <span class="box"></span> cleaned down: ${rooms}.`
}

function works(list: readonly HalfDayWork[]): readonly Markup[] {
  return list.flatMap(({ roomName, passes }) =>
    passes.map(
      (pass) => html`<p><span class="box"></span> <span class="what">${roomName}:</span> ${pass}</p>`,
    ),
  )
}
