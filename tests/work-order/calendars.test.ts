import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { headlessOutputs } from '../../core/work-order/outputs.ts'
import { readCalendar } from './calendar-reader.ts'
import { sampleInput } from './sample-order.ts'

const { files } = headlessOutputs(sampleInput())
const calendars = Object.keys(files).filter((name) => name.endsWith('.ics'))

test.each(calendars)('two independent readers read the same in %s', (name) => {
  const text = files[name] ?? ''
  const read = readCalendar(text)
  const calendar = new ICAL.Component(ICAL.parse(text))
  const events = calendar.getAllSubcomponents('vevent')
  expect(read.name).toBe(calendar.getFirstPropertyValue('name'))
  expect(read.events).toHaveLength(events.length)
  expect(events.length).toBeGreaterThan(0)
  for (const [index, event] of events.entries()) {
    const own = read.events[index] ?? {}
    for (const property of ['uid', 'summary', 'description', 'location']) {
      expect(own[property.toUpperCase()]).toBe(event.getFirstPropertyValue(property) ?? undefined)
    }
    for (const property of ['dtstart', 'dtend']) {
      const moment = event.getFirstPropertyValue(property) as { toICALString(): string }
      expect(own[property.toUpperCase()]).toBe(moment.toICALString())
    }
  }
  expect(new Set(read.events.map(({ UID }) => UID)).size).toBe(events.length)
})
