import type { LengthUnitSystem } from '../../units/length.ts'
import { dateWords, dateWordsWithYear } from '../date-words.ts'
import type { HalfDayWork, PersonDay, SiteDay, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import type { ChosenWeek } from '../paper-choice.ts'
import { mergedCans } from '../site-days.ts'
import { dayCautions } from './day-cautions.ts'

/** One week of one person, or of the whole crew: one page. */
export function weekPage(order: WorkOrder, { person, week }: ChosenWeek, pageName: string): Markup {
  const { unitSystem } = order
  const people = week.days.flatMap((day) => day.people)
  return html`<section class="sheet ${pageName}">
<header class="head"><h2>${person ?? 'The crew'}: week of ${dateWordsWithYear(week.monday, unitSystem)}</h2><p>${order.title}${weekOf(order, week.monday)}</p></header>
<table class="week ${densityOf(week.days)}"><caption>Half days</caption>
<thead><tr><th scope="col">Day</th>${person === null ? html`<th scope="col">Who</th>` : null}<th scope="col">Morning</th><th scope="col">Afternoon</th><th scope="col">Cans to bring</th></tr></thead>
${week.days.map((day) => dayRows(day, unitSystem, person === null))}</table>
${dayCautions(people)}
</section>`
}

/** `, week 2 of 5`, counted over the weeks in which somebody works. */
function weekOf(order: WorkOrder, monday: string): string {
  const number = order.weeks.findIndex((week) => week.monday === monday) + 1
  return `, week ${number} of ${order.weeks.length}`
}

/** Lines that a page has room for at the usual size, and at the small one (measured on Letter). */
const usualLines = 46
const smallLines = 60

function densityOf(days: readonly SiteDay[]): string {
  const lines = days.reduce((total, day) => total + linesOfDay(day), 0)
  return lines <= usualLines ? 'roomy' : lines <= smallLines ? 'close' : 'closest'
}

function linesOfDay({ people, chores }: SiteDay): number {
  const work = people.reduce(
    (total, each) => total + Math.max(linesOfHalf(each.morning), linesOfHalf(each.afternoon), 1),
    0,
  )
  return Math.max(work, mergedCans(people.map(({ cans }) => cans)).length * 2) + (chores.length > 0 ? 1 : 0)
}

function linesOfHalf(works: readonly HalfDayWork[]): number {
  return works.reduce(
    (total, { passes, roomName }) => total + Math.ceil((roomName.length + passes.join(', ').length) / 34),
    0,
  )
}

function dayRows(day: SiteDay, system: LengthUnitSystem, forCrew: boolean): Markup {
  const rows = day.people.length
  const cans = mergedCans(day.people.map((each) => each.cans))
  const owner = day.people.find(({ crewMemberId }) => crewMemberId === day.choresOwner)
  return html`<tbody class="day">${day.people.map(
    (
      each,
      index,
    ) => html`<tr>${index > 0 ? null : html`<th scope="rowgroup" rowspan="${rows}">${dateWords(day.date, system)}</th>`}
${forCrew ? html`<td class="what">${each.name}</td>` : null}<td>${half(each.morning)}</td><td>${half(each.afternoon)}</td>
${index > 0 ? null : html`<td rowspan="${rows}">${cans.map((can) => html`<p class="can">${can.what}</p>`)}</td>`}</tr>`,
  )}${day.chores.length === 0 || owner === undefined ? null : choresRow(day, owner, forCrew)}</tbody>`
}

function half(works: readonly HalfDayWork[]): readonly Markup[] {
  return works.map(
    ({ roomName, passes }) => html`<p><span class="what">${roomName}:</span> ${passes.join('; ')}</p>`,
  )
}

/** One owner a day for what comes back every day. */
function choresRow(day: SiteDay, owner: PersonDay, forCrew: boolean): Markup {
  return html`<tr class="chores"><td></td><td colspan="${forCrew ? 4 : 3}">${day.chores.map(
    ({ what, roomNames }) =>
      html`<p><span class="box"></span> <span class="what">${owner.name}:</span> ${what}: ${roomNames.join(', ')}</p>`,
  )}</td></tr>`
}
