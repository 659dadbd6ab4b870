import { expect, test } from 'vitest'
import { wholeJob } from '../../core/work-order/paper-choice.ts'
import { pocketFileName, pocketHtml, pocketParts } from '../../core/work-order/pocket-page.ts'
import { blankPage } from '../journeys/blank-page.ts'
import { sampleOrder } from './sample-order.ts'

const order = sampleOrder()
const pocket = pocketHtml(order, pocketParts, wholeJob, 'job-2027-03-29')
const pageFor = await blankPage({ viewport: { width: 390, height: 844 } })

test('one file holds it all: it names nothing outside, and its policy lets nothing in or out', () => {
  expect(pocket).toContain(
    `content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:"`,
  )
  // The name of a drawing's language is an address that nobody asks for.
  const named = pocket.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')
  expect(named).not.toMatch(/\bsrc=|url\((?!#)|@import|https?:|fetch\(|\son[a-z]+=/i)
  expect(pocket.match(/<script/g)).toHaveLength(1)
  expect(pocket).toContain('&lt;script&gt;alert(1)&lt;/script&gt;')
})

test('no price is on it, and the rooms and passes of the papers are', () => {
  expect(pocket).not.toContain('$')
  expect(pocket).toContain('Study')
  expect(pocket).toContain('Drop cloths')
})

test('its name is one that every mail program keeps', () => {
  expect(pocketFileName('Café “Old house”, No. 5', '2027-03-29')).toBe(
    'pocket-caf-old-house-no-5-2027-03-29.html',
  )
})

test('ticks come back on the same phone, and pages are found from the list at the top', async (context) => {
  const page = pageFor(context)
  // A place of its own, as a file on a phone has it.
  await page.route('http://phone.example/**', (route) =>
    route.fulfill({ contentType: 'text/html; charset=utf-8', body: pocket }),
  )
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  await page.goto('http://phone.example/pocket.html')
  await page.locator('#kept').getByText('on this phone only').waitFor()
  const boxes = page.locator('input[type=checkbox]')
  expect(await boxes.count()).toBeGreaterThan(10)
  await boxes.nth(3).check()
  await page.reload()
  expect(await boxes.nth(3).isChecked()).toBe(true)
  expect(await boxes.nth(4).isChecked()).toBe(false)
  await page.getByRole('link', { name: 'Shopping list' }).click()
  expect(new URL(page.url()).hash).toMatch(/^#page-\d+$/)
  expect(asked.every((address) => address.startsWith('http://phone.example/pocket.html'))).toBe(true)
  // Nothing makes the page itself wider than the phone.
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})
