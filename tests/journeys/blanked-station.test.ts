import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { OpenedJob } from '../../core/contract/requests.ts'
import { succeed } from '../../core/project/problem.ts'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { answerInstead } from './host-answers.ts'
import { browserJourney } from './hosts.ts'

async function goTo(page: Page, station: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
}

async function demo(page: Page): Promise<OpenedJob> {
  await page.getByTestId('house-figures').waitFor()
  const { jobKey } = granted(await askFrom(page, 'listJobs', {}))[0] as { jobKey: string }
  return granted(await askFrom(page, 'openJob', { jobKey }))
}

browserJourney('one station that fails leaves the others, the job and the way back', async (program) => {
  const { page } = program
  const opened = await demo(page)
  const houseRules = { ...opened.job.houseRules, price: null }
  const poisoned = { ...opened, job: { ...opened.job, houseRules } }
  const between = await answerInstead(program, 'openJob', succeed(poisoned))
  await page.reload()
  await page.getByRole('button', { name: 'Add a floor' }).click()
  await page.locator('[data-stored="stored"]').waitFor()

  await goTo(page, 'Figures')
  const fallen = page.getByRole('alert', { name: 'The Figures station failed' })
  await fallen.getByRole('heading', { name: 'The Figures station could not be shown' }).waitFor()
  await fallen.getByText('nothing is lost by this').waitFor()
  await fallen.getByText('Details for a report').click()
  await fallen.getByText('TypeError').waitFor()
  await page.locator('[data-stored="stored"]').waitFor()
  await fallen.getByRole('button', { name: 'Try again' }).click()
  await fallen.getByRole('button', { name: /^Undo: add / }).click()
  await fallen.getByRole('button', { name: /^Undo: add / }).waitFor({ state: 'detached' })
  await page.locator('[data-stored="stored"]').waitFor()
  await fallen.getByRole('button', { name: 'Save a copy' }).click()
  await page.getByText('no copy of it can be written').waitFor()
  await page.getByRole('button', { name: 'OK', exact: true }).click()

  await goTo(page, 'House')
  await page.getByTestId('house-figures').waitFor()
  await between.takeAway()
  const book = granted(await askFrom(page, 'openJob', { jobKey: opened.jobKey }))
  expect(book.job).toEqual(opened.job)
  await page.reload()
  await goTo(page, 'Figures')
  await page.getByRole('tab').first().waitFor()
})

browserJourney(
  'a drawing that fails is said like any other station, and the frame stays',
  async (program) => {
    const { page } = program
    const opened = await demo(page)
    const [roomId = '', room] = Object.entries(opened.job.rooms)[0] ?? []
    const rooms = { ...opened.job.rooms, [roomId]: { ...room, corners: null } }
    const between = await answerInstead(
      program,
      'openJob',
      succeed({ ...opened, job: { ...opened.job, rooms } }),
    )
    await page.reload()
    await page.getByRole('heading', { name: 'The House station could not be shown' }).waitFor()
    await page.getByRole('button', { name: 'Book of jobs' }).waitFor()
    await page.locator('[data-stored="stored"]').waitFor()
    await between.takeAway()
  },
)

browserJourney('what fails outside every station gives a page with words and a way on', async ({ page }) => {
  await demo(page)
  await page.addInitScript(() => {
    const listen = window.addEventListener.bind(window)
    window.addEventListener = (kind: string, ...rest: unknown[]) => {
      const isBroken = sessionStorage.getItem('mended') === null
      if (kind === 'unhandledrejection' && isBroken) throw new Error('broken on purpose')
      return (listen as (...all: unknown[]) => void)(kind, ...rest)
    }
  })
  await page.reload()
  await page.getByRole('heading', { name: 'The window could not be shown' }).waitFor()
  const details = page.getByText('broken on purpose').first()
  // The job that opens meanwhile is tried at once, and the page comes anew under the pointer.
  while (!(await details.isVisible())) await page.getByText('Details for a report').click()
  await page.evaluate(() => sessionStorage.setItem('mended', 'yes'))
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.getByTestId('house-figures').waitFor()
})
