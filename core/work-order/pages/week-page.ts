import { dateWords, dateWordsWithYear } from '../../time/date-words.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import type { HalfDayWork, PersonDay, SiteDay, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import type { ChosenWeek } from '../paper-choice.ts'
import { mergedCans } from '../site-days.ts'
import { dayCautions } from './day-cautions.ts'
import { densityOf, isSameAllDay } from './week-fit.ts'

/** Weeks of one person, or of the whole crew, that share a page: as a rule one. */
export function weekPage(order: WorkOrder, weeks: readonly ChosenWeek[], pageName: string): Markup {
  const people = weeks.flatMap(({ week }) => week.days.flatMap((day) => day.people))
  return html`<section class="sheet weeks ${pageName}">${weeks.map((each) => weekTable(order, each, densityOf(weeks)))}
${dayCautions(people)}
<p class="source">Half days, not hours: a pass that slips stays in its half; what stands across both goes on all day. Rooms are cleaned down before everybody leaves.</p>
</section>`
}

function weekTable(order: WorkOrder, chosen: ChosenWeek, density: string): Markup {
  const { person, week } = chosen
  const { unitSystem } = order
  return html`<header class="head"><h2>${person ?? 'The crew'}: week of ${dateWordsWithYear(week.monday, unitSystem)}</h2><p>${order.title}${weekOf(order, week.monday)}</p></header>
<table class="week ${density}"><caption class="unseen">Week of ${dateWords(week.monday, unitSystem)}</caption>
<thead><tr><th scope="col">Day</th>${person === null ? html`<th scope="col">Who</th>` : null}<th scope="col">Morning</th><th scope="col">Afternoon</th><th scope="col">Cans to bring</th></tr></thead>
${week.days.map((day) => dayRows(day, unitSystem, person === null))}</table>`
}

/** `, week 2 of 5`, counted over the weeks in which somebody works. */
function weekOf(order: WorkOrder, monday: string): string {
  const number = order.weeks.findIndex((week) => week.monday === monday) + 1
  return `, week ${number} of ${order.weeks.length}`
}

function dayRows(day: SiteDay, system: LengthUnitSystem, forCrew: boolean): Markup {
  const rows = day.people.length
  const cans = mergedCans(day.people.map((each) => each.cans)).map(({ what }) => what)
  return html`<tbody class="day">${day.people.map(
    (
      each,
      index,
    ) => html`<tr>${index > 0 ? null : html`<th scope="rowgroup" rowspan="${rows}">${dayWords(day.date, system)}</th>`}
${forCrew ? html`<td class="what">${each.name}</td>` : null}${halves(each)}
${index > 0 ? null : html`<td class="cans" rowspan="${rows}">${cans.join('; ')}</td>`}</tr>`,
  )}${alarmsRow(day, forCrew)}</tbody>`
}

/** The weekday over the date. */
function dayWords(date: string, system: LengthUnitSystem): Markup {
  const [weekday = '', ...rest] = dateWords(date, system).split(' ')
  return html`${weekday}<br>${rest.join(' ')}`
}

function halves(person: PersonDay): Markup {
  return isSameAllDay(person)
    ? html`<td colspan="2">${half(person.morning)}</td>`
    : html`<td>${half(person.morning)}</td><td>${half(person.afternoon)}</td>`
}

function half(works: readonly HalfDayWork[]): readonly Markup[] {
  return works.map(
    ({ roomName, passes }) => html`<p><span class="what">${roomName}:</span> ${passes.join('; ')}</p>`,
  )
}

/** One owner a day. */
function alarmsRow(day: SiteDay, forCrew: boolean): Markup | null {
  const owner = day.people.find(({ crewMemberId }) => crewMemberId === day.choresOwner)
  const alarms = day.chores.find(({ kind }) => kind === 'alarms')
  if (owner === undefined || alarms === undefined) return null
  return html`<tr class="chores"><td></td><td colspan="${forCrew ? 4 : 3}"><span class="what">Alarms, ${owner.name}:</span> <span class="box"></span> cover <span class="box"></span> uncover and test: ${alarms.roomNames.join(', ')}</td></tr>`
}
