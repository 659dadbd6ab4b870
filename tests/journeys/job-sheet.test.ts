import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function type(page: Page, field: string, text: string): Promise<void> {
  await page.getByLabel(field, { exact: true }).fill(text)
  await page.keyboard.press('Enter')
}

async function goTo(page: Page, station: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
}

/** The price with tax, in dollars, as the Figures station says it. */
async function price(page: Page): Promise<number> {
  await goTo(page, 'Figures')
  const text = await page.locator('.tabs-sum strong').last().textContent()
  return Number(text?.replace(/[^0-9.]/g, ''))
}

browserJourney(
  'the facts of a job are typed on its sheet, and the lead text and the price follow',
  async (program) => {
    const { page } = program
    await page.getByTestId('house-figures').waitFor()
    const livedIn = await price(page)
    await page.getByTitle('Open the job sheet (Alt+J)').click()
    await page.getByRole('heading', { name: 'Job sheet' }).waitFor()
    await page.getByText('Before 1978: lead-safe rules apply').waitFor()
    await type(page, 'Client', 'The family upstairs')
    await type(page, 'Year built', '1995')
    await page.getByText('1978 or later: the federal lead-safe rule does not reach this house.').waitFor()
    await page.getByText('Empty', { exact: true }).click()
    await page.getByRole('button', { name: 'Done', exact: true }).click()
    await page.getByText('The family upstairs · built 1995').waitFor()
    expect(await price(page)).toBeLessThan(livedIn)
    await goTo(page, 'Finish')
    expect(await page.getByText('the federal renovation rule applies').count()).toBe(0)
    await page.locator('[data-stored="stored"]').waitFor()
    await program.restart()
    await program.page.getByText('The family upstairs · built 1995').waitFor()
  },
)

browserJourney('a new job begins with its sheet, and starts with the usual finishes', async ({ page }) => {
  await page.getByTestId('house-figures').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill('Mill Street')
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByText('Not known: the house counts as one from before 1978').waitFor()
  await type(page, 'Year built', 'about 1900')
  await page.getByText('Type a whole number from 1600 to 2200.').waitFor()
  await type(page, 'Year built', '1890')
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
  await page.getByText('client not named · built 1890').waitFor()
  await page.keyboard.press('Alt+J')
  await page.getByRole('heading', { name: 'Job sheet' }).waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('heading', { name: 'Job sheet' }).waitFor({ state: 'detached' })
})
