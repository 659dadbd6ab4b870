import { addDays } from '../time/local-date.ts'
import { instantOf, type SiteMoment } from '../time/site-moment.ts'
import { calendarInstant, calendarText, contentLine } from './calendar-text.ts'

/** One event of a calendar. */
export interface CalendarEvent {
  /** Outlives new plans, so that a later file moves the event where it was read before. */
  readonly uid: string
  readonly summary: string
  readonly description: string
  readonly location: string
  /** From a moment to a moment on site, or whole days, the last one included. */
  readonly when:
    | { readonly kind: 'moments'; readonly from: SiteMoment; readonly to: SiteMoment }
    | { readonly kind: 'days'; readonly from: string; readonly to: string }
  readonly cancelled: boolean
}

interface CalendarFacts {
  /** What calendar programs call it. */
  readonly name: string
  readonly timeZone: string
  /** When the file is made: a file made later counts as the newer one. */
  readonly madeAt: SiteMoment
}

/** A calendar as iCalendar (RFC 5545), moments in UTC; its name as RFC 7986 has it and as older programs read it. */
export function calendarFile(facts: CalendarFacts, events: readonly CalendarEvent[]): string {
  const made = instantOf(facts.madeAt, facts.timeZone)
  return [
    contentLine('BEGIN', 'VCALENDAR'),
    contentLine('VERSION', '2.0'),
    contentLine('PRODID', '-//Coatwright//Calendar//EN'),
    contentLine('NAME', calendarText(facts.name)),
    contentLine('X-WR-CALNAME', calendarText(facts.name)),
    ...events.flatMap((event) => eventLines(event, made, facts.timeZone)),
    contentLine('END', 'VCALENDAR'),
  ].join('')
}

/** `made` is the minute the file is made in: a number that grows, as SEQUENCE asks. */
function eventLines(event: CalendarEvent, made: number, timeZone: string): readonly string[] {
  return [
    contentLine('BEGIN', 'VEVENT'),
    contentLine('UID', calendarText(`${event.uid}@coatwright`)),
    contentLine('DTSTAMP', calendarInstant(made)),
    contentLine('SEQUENCE', String(Math.max(0, made))),
    ...whenLines(event.when, timeZone),
    contentLine('SUMMARY', calendarText(event.summary)),
    ...(event.description === '' ? [] : [contentLine('DESCRIPTION', calendarText(event.description))]),
    ...(event.location === '' ? [] : [contentLine('LOCATION', calendarText(event.location))]),
    ...(event.cancelled ? [contentLine('STATUS', 'CANCELLED')] : []),
    contentLine('END', 'VEVENT'),
  ]
}

/** The end of whole days is the day after (section 3.6.1). */
function whenLines(when: CalendarEvent['when'], timeZone: string): readonly string[] {
  if (when.kind === 'days') {
    return [
      contentLine('DTSTART;VALUE=DATE', when.from.replaceAll('-', '')),
      contentLine('DTEND;VALUE=DATE', addDays(when.to, 1).replaceAll('-', '')),
      contentLine('TRANSP', 'TRANSPARENT'),
    ]
  }
  return [
    contentLine('DTSTART', calendarInstant(instantOf(when.from, timeZone))),
    contentLine('DTEND', calendarInstant(instantOf(when.to, timeZone))),
  ]
}
