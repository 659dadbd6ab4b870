/**
 * How long the eye waits in a house of 60 rooms, in a browser without a window: from a press to the next painted frame, frames of a
 * drag, and the first paint beside that of an empty page. Each is told as its middle value, as a ratio to what it may take (1 or less
 * is met), and with the work of the page's own thread, which other programs on the machine do not change as much.
 *   npm run bench:eye [-- <runs> [paint reload drag station color tick day]]
 */

import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core'
import { writeJobFile } from '../../core/project/job-file.ts'
import { linen } from '../fixtures/plain-room.ts'
import { askFrom } from '../journeys/ask-host.ts'
import { findChromium } from '../journeys/chromium.ts'
import { endProcess, startLoopback } from '../journeys/loopback-process.ts'
import { granted } from '../storage/books.ts'
import { framesDuring, median, pageWork, pressAndSee, rested, type Seen } from './eye-page.ts'
import { manyRooms } from './many-rooms.ts'

const [wanted = '5', ...parts] = process.argv.slice(2)
const runs = Number(wanted)
const isWanted = (part: string) => parts.length === 0 || parts.includes(part)
const stations = ['House', 'Walk', 'Finish', 'Figures', 'Calendar', 'Site', 'Paper']
const may = { station: 100, tick: 50, color: 100, frame: 17, day: 100, firstPaint: 1.15 }

const found = await findChromium()
if (typeof found === 'string') throw new Error(found)
const folder = mkdtempSync(join(tmpdir(), 'coatwright-eye-'))
const { host, address } = await startLoopback({
  ...process.env,
  COATWRIGHT_BOOK: join(folder, 'book.sqlite'),
  COATWRIGHT_NO_BROWSER: '1',
})
const launch = () =>
  chromium.launch({
    executablePath: found.executablePath,
    env: { ...process.env, ...found.environment },
    args: ['--no-sandbox'],
  })

function show(name: string, seen: readonly Seen[], most: number): void {
  const frame = median(seen.map((each) => each.frame))
  const work = median(seen.map((each) => each.work))
  const figures = [
    `${frame.toFixed(0).padStart(6)} ms`,
    `ratio ${(frame / most).toFixed(2).padStart(6)}`,
    `page's own work ${work.toFixed(0).padStart(6)} ms`,
  ]
  console.log(`${name.padEnd(34)} ${figures.join('   ')}`)
}

const inStation = (name: string) => `.strip-station:has-text("${name}")`

async function repeated(run: (index: number) => Promise<Seen>): Promise<readonly Seen[]> {
  const seen: Seen[] = []
  for (let index = 0; index < runs; index++) seen.push(await run(index))
  return seen
}

/** From each station to the next. */
async function switches(page: Page, session: CDPSession): Promise<void> {
  for (const [index, name] of stations.entries()) {
    const before = inStation(stations.at(index - 1) ?? 'House')
    const seen = await repeated(async () => {
      await pressAndSee(page, session, before)
      return pressAndSee(page, session, inStation(name))
    })
    show(`to ${name}`, seen, may.station)
  }
}

/** The tick of a room's first pass and its taking back, while plans are looked for. */
async function ticks(page: Page, session: CDPSession): Promise<void> {
  await pressAndSee(page, session, inStation('Site'))
  await page.getByRole('option', { name: /^Room 7/ }).click()
  await page.getByRole('tab', { name: /^Passes/ }).click()
  const ticked = '.pass-tick .tick-button'
  await page.locator(ticked).first().waitFor()
  show('tick at Site', await repeated(() => pressAndSee(page, session, ticked)), may.tick)
}

async function colors(page: Page, session: CDPSession): Promise<void> {
  await pressAndSee(page, session, inStation('Finish'))
  await page.getByRole('option', { name: /^The whole house/ }).click()
  const wall = page.locator('.color-outline').first()
  await wall.waitFor()
  const seen = await repeated(async (index) => {
    const option = page.getByRole('option', { name: index % 2 === 0 ? 'Slate' : 'Linen' })
    // A list that is open closes when the card of the change before comes and the table moves.
    while (!(await option.isVisible())) {
      await page.getByRole('button', { name: /Walls: color/ }).click()
      await rested(page)
    }
    await rested(page)
    return pressAndSee(page, session, `[role="option"]:has-text("${index % 2 === 0 ? 'Slate' : 'Linen'}")`)
  })
  show('color of the whole house', seen, may.color)
}

async function days(page: Page, session: CDPSession): Promise<void> {
  await pressAndSee(page, session, inStation('Calendar'))
  await page.getByRole('button', { name: 'House on a day' }).click()
  const slider = page.getByRole('slider', { name: 'Day' })
  await slider.waitFor({ timeout: 120_000 })
  await slider.focus()
  await rested(page)
  const before = await pageWork(session)
  const moves = 8 * runs
  const times = await framesDuring(page, async () => {
    for (let index = 0; index < moves; index++) await page.keyboard.press('ArrowRight')
  })
  showFrames('house on a day: frames', times, ((await pageWork(session)) - before) / moves)
}

/** A room is dragged about among its neighbors. */
async function drag(page: Page, session: CDPSession): Promise<void> {
  await pressAndSee(page, session, inStation('House'))
  const box = await page.getByTestId('sheet').boundingBox()
  if (box === null) throw new Error('the sheet is not shown')
  const [x, y] = [box.x + box.width * 0.47, box.y + box.height * 0.47]
  await page.mouse.click(x, y)
  await rested(page)
  const before = await pageWork(session)
  const moves = 40 * runs
  await page.mouse.move(x, y)
  await page.mouse.down()
  const times = await framesDuring(page, async () => {
    for (let index = 0; index < moves; index++) {
      await page.mouse.move(x + 60 * Math.sin(index / 9), y + 40 * Math.cos(index / 7))
    }
  })
  const work = ((await pageWork(session)) - before) / moves
  await page.keyboard.press('Escape')
  await page.mouse.up()
  showFrames('drag of a room: frames', times, work)
}

function showFrames(name: string, times: readonly number[], work: number): void {
  const sorted = times.toSorted((one, other) => one - other)
  const late = sorted[Math.floor(0.95 * sorted.length)] ?? 0
  const within = times.filter((time) => time <= may.frame).length / times.length
  console.log(
    `${name.padEnd(34)} 95 % within ${late.toFixed(0)} ms   ratio ${(late / may.frame).toFixed(2)}   ${(100 * within).toFixed(0)} % within ${may.frame} ms   page's own work ${work.toFixed(1)} ms a move`,
  )
}

/** From the start of the runtime to the first paint of an address (ms). */
async function firstPaint(at: string): Promise<number> {
  const begun = Date.now()
  const browser = await launch()
  try {
    const page = await browser.newPage()
    await page.goto(at, { waitUntil: 'commit' })
    const painted = await page.waitForFunction(() => {
      const entry = performance.getEntriesByName('first-contentful-paint')[0]
      return entry === undefined ? 0 : performance.timeOrigin + entry.startTime
    })
    return (await painted.jsonValue()) - begun
  } finally {
    await browser.close()
  }
}

/** Beside an empty page of the same host with the same headers, which begins in a process of its own as well, and beside one of no host at all. */
async function firstPaints(): Promise<void> {
  const own = address.replace(/#.*/, '')
  const { headers } = await fetch(own)
  const empty = createServer((_request, response) => {
    response.setHeaders(new Headers([...headers].filter(([name]) => name !== 'content-length')))
    response.end('<title>Empty</title><p>Empty')
  }).listen(0, '127.0.0.1')
  await once(empty, 'listening')
  const pages = {
    own,
    empty: `http://127.0.0.1:${(empty.address() as AddressInfo).port}/`,
    bare: 'data:text/html,<title>Empty</title><p>Empty',
  }
  const times: Record<keyof typeof pages, number[]> = { own: [], empty: [], bare: [] }
  for (let run = 0; run < runs; run++) {
    for (const name of ['own', 'empty', 'bare'] as const) times[name].push(await firstPaint(pages[name]))
  }
  empty.close()
  const ratio = median(times.own) / median(times.empty)
  console.log(
    `${'first paint'.padEnd(34)} ${median(times.own).toFixed(0).padStart(6)} ms   ${ratio.toFixed(2)} of an empty page's of such a host, ${(median(times.own) / median(times.bare)).toFixed(2)} of a page of none   ratio ${(ratio / may.firstPaint).toFixed(2)}`,
  )
}

/** From a reload to the drawn house. */
async function reloads(page: Page): Promise<void> {
  const times: number[] = []
  for (let run = 0; run < runs; run++) {
    const begun = Date.now()
    await page.reload({ waitUntil: 'commit' })
    await page.getByTestId('house-figures').waitFor()
    times.push(Date.now() - begun)
    await rested(page)
  }
  console.log(`${'reload to the drawn house'.padEnd(34)} ${median(times).toFixed(0).padStart(6)} ms`)
}

async function openHouse(browser: Browser): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  page.setDefaultTimeout(120_000)
  await page.goto(address)
  const slate = { ...linen, id: 'slate' as typeof linen.id, name: 'Slate', shown: '#55606a' }
  const house = manyRooms(60)
  const text = writeJobFile({ ...house, colours: { ...house.colours, [slate.id]: slate } })
  granted(await askFrom(page, 'importJob', { text }))
  await page.reload()
  await page.getByTestId('house-figures').waitFor()
  await rested(page)
  return page
}

try {
  if (isWanted('paint')) await firstPaints()
  const browser = await launch()
  const page = await openHouse(browser)
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const looks = { reload: reloads, drag, station: switches, color: colors, tick: ticks, day: days }
  for (const [part, look] of Object.entries(looks)) if (isWanted(part)) await look(page, session)
  await browser.close()
} finally {
  await endProcess(host)
  rmSync(folder, { recursive: true, force: true })
}
process.exit(0)
