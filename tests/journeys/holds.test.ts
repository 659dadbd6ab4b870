import { expect } from 'vitest'
import { journey } from './hosts.ts'

journey('a hold is given a name and a day, cleared, and opened again', async ({ page }) => {
  await page.getByTestId('house-figures').waitFor()
  await page.keyboard.press('Alt+2')
  await page.getByRole('button', { name: /^.*Floor$/ }).click()
  await page.getByRole('option', { name: /Upper/ }).click()
  await page.getByRole('button', { name: /^.*Room$/ }).click()
  await page.getByRole('option', { name: 'Upper hall' }).click()
  const holds = page.getByRole('region', { name: 'Holds' })
  const leak = holds.locator('.callout', { hasText: 'The leak behind the stain in Upper hall' })
  await leak.getByText('Assumed: the usual 14 days').waitFor()

  await leak.getByLabel('Who sees to it').fill('The roofer')
  await leak.getByLabel('Who sees to it').press('Enter')
  await leak.getByRole('textbox', { name: 'Expected on' }).fill('2027-05-03')
  await leak.getByRole('textbox', { name: 'Expected on' }).press('Enter')
  await page.keyboard.press('Alt+7')
  const cover = page.frameLocator('iframe').locator('section.sheet').first()
  await cover.getByText('Who sees to it: The roofer. Expected: Mon May 3.').waitFor()

  await page.keyboard.press('Alt+2')
  const clear = leak.getByRole('button', { name: 'Clear it' })
  expect(await clear.isDisabled()).toBe(true)
  await leak.getByRole('textbox', { name: 'Cleared on' }).fill('2027-04-01')
  await leak.getByLabel('Cleared by').fill('A. Painter')
  await leak.getByLabel('Cleared by').press('Enter')
  await clear.click()
  await holds.getByText('Cleared Thu Apr 1, 2027 by A. Painter.').waitFor()
  await holds.getByRole('button', { name: 'Not cleared after all' }).click()
  await leak.getByLabel('Who sees to it').waitFor()
})
