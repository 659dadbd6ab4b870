import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function open(page: Page, station: string, tab?: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
  if (tab !== undefined) await page.getByRole('tab', { name: tab, exact: true }).click()
}

async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click()
}

async function startJob(page: Page): Promise<void> {
  await page.getByTestId('house-figures').waitFor()
  await press(page, 'Book of jobs')
  await page.getByLabel('New job').fill('Elm Street')
  await press(page, 'Start it')
  await press(page, 'Sketch the house')
  await page.getByLabel('A room by its size').fill("12' x 10'")
  await press(page, 'Add this room')
}

browserJourney(
  'the contingency comes from how sure the price is, and a finished pass says of the shop’s rates what it took',
  async ({ page }) => {
    await startJob(page)
    await open(page, 'Figures', 'Estimate')
    const sure = page.getByRole('region', { name: 'How sure is the price' })
    await sure.getByText('before tax would be enough four times in five').waitFor()
    await sure.getByRole('button', { name: /^Make the contingency/ }).click()
    await sure.getByText('is enough in 80 of 100').waitFor()
    await press(page, /^Undo: Take the contingency/)
    await sure.getByRole('button', { name: /^Make the contingency/ }).waitFor()

    await open(page, 'Site')
    await page.getByRole('listbox').getByText('Room 1', { exact: true }).click()
    await press(page, 'Set up: check off as done')
    await page.getByLabel('Minutes it took, all together').fill('120')
    await page.keyboard.press('Enter')

    await open(page, 'Figures', 'Afterwards')
    await page.getByText(/steps done have minutes written down/).waitFor()
    await page.getByLabel('Amount before tax').fill('231.40')
    await page.keyboard.press('Enter')
    await press(page, 'Write down the receipt')
    const money = page.getByRole('region', { name: 'Money' })
    await money.getByRole('row', { name: /^Paint and material .*\$231\.40/ }).waitFor()
    await press(page, 'Write down the cans')
    await page
      .getByRole('region', { name: 'Material' })
      .getByRole('row', { name: /gal [\d.]+ gal [\d.]+ gal$/ })
      .waitFor()

    const rates = page.getByRole('region', { name: 'Rates' })
    await rates
      .getByRole('button', { name: /^Take .* \(1 job\)$/ })
      .first()
      .click()
    await rates.getByRole('button', { name: /^Put back/ }).waitFor()
    await rates.getByText('The shop sheet holds one finished job, this one among them.').waitFor()

    await press(page, 'Make the page')
    const paper = page.frameLocator('iframe')
    await paper.getByRole('heading', { name: 'Planned against actual' }).waitFor()
    expect(await paper.getByRole('row', { name: /^Total/ }).count()).toBe(3)
  },
)
