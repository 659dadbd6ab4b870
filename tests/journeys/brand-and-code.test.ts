import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function goTo(page: Page, station: string, tab: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
  await page.getByRole('tab', { name: tab }).click()
}

browserJourney(
  'the brand of a product and the code of a color are typed in Finish and stand among the materials',
  async (program) => {
    const { page } = program
    await page.getByTestId('house-figures').waitFor()
    await goTo(page, 'Finish', 'Products')
    await page.getByRole('row', { name: /^Latex wall paint/ }).click()
    const product = page.getByRole('region', { name: 'Latex wall paint' })
    await product.getByLabel('Brand').fill('Invented Paint Works')
    await page.keyboard.press('Enter')
    await goTo(page, 'Finish', 'Finishes')
    const oat = page.locator('.colour-line').filter({ has: page.getByLabel('Shown: Oat') })
    await oat.getByLabel('Color code').fill('IP-104')
    await page.keyboard.press('Enter')
    await page.locator('[data-stored="stored"]').waitFor()
    await program.restart()
    await goTo(program.page, 'Figures', 'Materials')
    const row = program.page.getByRole('row', { name: /Oat, IP-104, matte/ })
    expect(await row.textContent()).toMatch(/^Latex wall paint\s*Invented Paint Works/)
  },
)
