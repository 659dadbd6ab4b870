import { execFile, execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import type { Page } from 'playwright-core'
import { afterAll, expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { specify } from '../../core/specification/specify.ts'
import type { WorkOrder } from '../../core/work-order/document-types.ts'
import { crewParts, type DocumentPart, workOrderHtml } from '../../core/work-order/html.ts'
import { weeksByPage } from '../../core/work-order/pages/week-fit.ts'
import { type Paper, pageMargin } from '../../core/work-order/paper-size.ts'
import { fitSheet } from '../../core/work-order/room-sheet/fit.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { workOrderFile } from '../../core/work-order/work-order-file.ts'
import { blankPage } from '../journeys/blank-page.ts'

const run = promisify(execFile)
const pageFor = await blankPage()
const folder = mkdtempSync(join(tmpdir(), 'coatwright-pages-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function jobOf(fileName: string): Job {
  const read = readJobFile(readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', fileName), 'utf8'))
  if (!read.ok) throw new Error(read.problem.sentence)
  return read.value
}

/** Its papers by a plan that is good enough to print. */
function orderOf(job: Job): WorkOrder {
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const plan = planJob(job, specification, minutesByStep(job, specification), { seed: 1, iterations: 300 })
  if (!plan.ok) throw new Error(plan.problem.sentence)
  return workOrder(job, takeoff, specification, estimate(job, takeoff, specification), plan.value)
}

const oldHouse = jobOf('old-house.json')
const house = orderOf(oldHouse)

/** Points from the top of the sheet down to the last line printed on it, page numbers left out; and the sheet's own height. */
interface PrintedPage {
  readonly words: string
  readonly lowest: number
  readonly height: number
}

/** Every page of a document as the print engine lays it out, read back from the PDF. */
async function pagesOf(
  on: Page,
  order: WorkOrder,
  paper: Paper,
  parts: readonly DocumentPart[],
): Promise<readonly PrintedPage[]> {
  await on.setContent(workOrderHtml(order, paper, parts))
  const file = join(folder, 'paper.pdf')
  writeFileSync(file, await on.pdf({ preferCSSPageSize: true }))
  const { stdout } = await run('pdftotext', ['-bbox', file, '-'], { maxBuffer: 100_000_000 })
  return stdout
    .split('<page ')
    .slice(1)
    .map((text) => {
      const height = Number(/height="([\d.]+)"/.exec(text)?.[1])
      const words = [...text.matchAll(/yMax="([\d.]+)">([^<]*)</g)].map(([, low, word]) => ({
        low: Number(low),
        word: word ?? '',
      }))
      const foot = height - (pageMargin.bottom * 72) / 25.4
      const inside = words.filter(({ low }) => low < foot)
      return {
        words: inside.map(({ word }) => word).join(' '),
        lowest: Math.max(0, ...inside.map(({ low }) => low)),
        height,
      }
    })
}

function printed(name: string, check: (page: Page) => Promise<void>): void {
  test(name, { timeout: 60_000 }, async (context) => {
    const page = pageFor(context)
    if (!readsPdf()) return context.skip('no pdftotext here')
    await check(page)
  })
}

function readsPdf(): boolean {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

function shortPages(pages: readonly PrintedPage[]): readonly string[] {
  return pages
    .slice(0, -1)
    .filter(({ lowest, height }) => lowest < height / 4)
    .map(({ words }) => words.slice(0, 60))
}

for (const paper of ['letter', 'a4'] as const) {
  printed(`every room set has one sheet on ${paper} or two, as many as were counted on`, async (on) => {
    const pages = await pagesOf(on, house, paper, ['rooms'])
    const expected = house.rooms.map((room) => fitSheet(room, paper, house.unitSystem).pages)
    expect(pages).toHaveLength(expected.reduce<number>((sum, each) => sum + each, 0))
    expect(expected.filter((each) => each === 1).length).toBeGreaterThanOrEqual(10)
    // Each sheet ends with the places to be signed.
    expect(pages.filter(({ words }) => words.includes('Accepted by, date'))).toHaveLength(house.rooms.length)
    expect(shortPages(pages)).toEqual([])
  })

  printed(`the whole crew pack of the old house is at most 35 pages on ${paper}`, async (on) => {
    const pages = await pagesOf(on, house, paper, crewParts)
    expect(pages.length).toBeLessThanOrEqual(35)
  })

  printed(`cover and color record leave no page empty on ${paper}`, async (on) => {
    const cover = await pagesOf(on, house, paper, ['cover'])
    expect(cover.length).toBeLessThanOrEqual(2)
    expect(shortPages(cover)).toEqual([])
    const record = await pagesOf(on, house, paper, ['colorRecord'])
    expect(record.length).toBeLessThanOrEqual(4)
    expect(shortPages(record)).toEqual([])
  })

  printed(`the whole pack of one plain room is at most 4 pages on ${paper}`, async (on) => {
    const pages = await pagesOf(on, orderOf(jobOf('plain-room.json')), paper, crewParts)
    expect(pages.length).toBeLessThanOrEqual(4)
  })
}

for (const paper of ['letter', 'a4'] as const) {
  printed(`weeks take as many pages as were counted on ${paper}`, async (on) => {
    const pages = await pagesOf(on, house, paper, ['weeks'])
    const weeks = house.weeks.map((week) => ({ person: null, week }))
    expect(pages).toHaveLength(weeksByPage(weeks).length)
  })
}

printed('hours of every room set are printed as work-order.json has them', async (on) => {
  const file = workOrderFile(oldHouse, house)
  const rooms = (await pagesOf(on, house, 'letter', ['rooms'])).filter(({ words }) =>
    words.includes('Earliest day'),
  )
  expect(rooms.map(({ words }) => /Person-hours ([\d.]+) h/.exec(words)?.[1])).toEqual(
    file.rooms.map(({ personMinutes }) => (personMinutes / 60).toFixed(1)),
  )
})

printed('nothing on a room sheet is cut off where the notes end', async (on) => {
  await on.emulateMedia({ media: 'print' })
  await on.setViewportSize({ width: 740, height: 1000 })
  await on.setContent(workOrderHtml(house, 'letter', ['rooms']))
  const spills = await on.evaluate(() =>
    [...document.querySelectorAll('.leaf')]
      .filter((leaf) => leaf.scrollHeight > leaf.clientHeight + 1)
      .map((leaf) => leaf.textContent?.slice(0, 40)),
  )
  expect(spills).toEqual([])
})
