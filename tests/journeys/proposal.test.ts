import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function startJob(page: Page, title: string, yearBuilt: string): Promise<void> {
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill(title)
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByLabel('Year built').fill(yearBuilt)
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByLabel('A room by its size').fill("12' x 10'")
  await page.getByRole('button', { name: 'Add this room' }).click()
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: 'Paper' }).click()
  await page.getByText('Proposal', { exact: true }).click()
}

browserJourney(
  'a shop sheet is filled in, and a proposal of a house of 1995 has no lead text where one of 1920 has it',
  async ({ page }) => {
    await page.getByTestId('house-figures').waitFor()
    await page.getByRole('button', { name: 'Book of jobs' }).click()
    await page.getByRole('button', { name: 'Shop sheet' }).click()
    await page.getByLabel('Business name').fill('Our own shop')
    await page.keyboard.press('Enter')
    await page.locator('[data-stored="stored"]').waitFor()
    await page.getByRole('tab', { name: 'Money and hours' }).click()
    await page.getByText('The percentages below are shop assumptions').waitFor()
    await page.getByRole('button', { name: 'Back to the job' }).click()
    await startJob(page, 'New street', '1995')
    const proposal = page.frameLocator('iframe')
    await proposal.getByText('Our own shop').first().waitFor()
    await proposal.getByText('Shop assumptions still').waitFor()
    expect(await proposal.getByText(/\blead\b/i).count()).toBe(0)
    await startJob(page, 'Old street', '1920')
    await proposal.getByText('The house was built in 1920').waitFor()
    expect(await proposal.getByText('Robin').count()).toBe(0)
  },
)
