import type { LengthUnitSystem } from '../../units/length.ts'
import { dateWordsWithYear, timeWords } from '../date-words.ts'
import type { DayEntry, DaySheet } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'

/** One person's day. */
export function dayPage(sheet: DaySheet, system: LengthUnitSystem, pageName: string): Markup {
  return html`<section class="sheet ${pageName}">
<header class="head"><h2>${sheet.name}</h2><p>${dateWordsWithYear(sheet.date, system)}</p></header>
<table><caption>Day sheet</caption>
<thead><tr><th>Done</th><th>From</th><th>To</th><th>Room</th><th>Work</th><th>Take along</th><th>With</th></tr></thead>
<tbody>${sheet.entries.map((entry) => entryRow(entry, system))}</tbody></table>
${cautions(sheet)}
${everyDay(sheet)}
<div class="sign"><div>Notes: what was found, what is missing</div><div>Hours worked</div></div>
</section>`
}

function entryRow(entry: DayEntry, system: LengthUnitSystem): Markup {
  return html`<tr><td><span class="box"></span></td><td class="tight">${timeWords(entry.startsAt, system)}</td><td class="tight">${timeWords(entry.endsAt, system)}</td>
<td class="what">${entry.roomName}</td><td>${lines(entry.what)}</td><td>${lines(entry.materials)}</td><td>${entry.with.join(', ')}</td></tr>`
}

function lines(texts: readonly string[]): readonly Markup[] {
  return texts.map((text, index) => html`${index === 0 ? null : html`<br>`}${text}`)
}

function cautions(sheet: DaySheet): Markup | null {
  if (sheet.cautions.length === 0) return null
  return html`<div class="stop">${sheet.cautions.map((caution) => html`<p>${caution.text}</p>`)}</div>`
}

function everyDay(sheet: DaySheet): Markup | null {
  if (sheet.everyDay.length === 0) return null
  return html`<section><h3>Today as on every day of work there</h3>
<ul class="cautions">${sheet.everyDay.map((text) => html`<li><span class="box"></span> ${text}</li>`)}</ul>
<p class="source">A covered alarm protects nobody: uncover and try each one before leaving.</p></section>`
}
