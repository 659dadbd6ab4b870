import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

browserJourney(
  'a safety rule is left out only for a written reason, which stands on the papers',
  async ({ page }) => {
    await page.getByTestId('house-figures').waitFor()
    await page.keyboard.press('Alt+3')
    await page.getByText('House rules', { exact: true }).click()
    const search = page.getByRole('searchbox', { name: 'Find a rule' })
    await search.fill('Lead-safe work before 1978')
    const rule = page.getByRole('article').filter({ hasText: 'Lead-safe work before 1978' })
    expect(await rule.getByRole('checkbox').count()).toBe(0)

    const limit = rule.getByLabel('Most disturbed in one room under the minor-repair exemption')
    await limit.fill('20')
    await limit.press('Enter')
    await rule.getByText(/^It may only be made smaller than 6/).waitFor()
    await limit.press('Escape')

    await rule.getByRole('button', { name: 'Leave out with a written reason' }).click()
    const leave = rule.getByRole('button', { name: 'Leave it out for this reason' })
    expect(await leave.isDisabled()).toBe(true)
    await rule.getByLabel('Tested by (certified person, certificate)').fill('I. Spector, certificate 12')
    await rule.getByLabel('Number of the report').fill('R-7')
    await rule.getByRole('textbox', { name: 'Tested on' }).fill('2027-02-03')
    await rule.getByLabel('What was tested and found').fill('All painted surfaces tested, none with lead.')
    await rule.getByLabel('Number of the report').click()
    if (process.env.COATWRIGHT_PICTURES)
      await page.screenshot({ path: `${process.env.COATWRIGHT_PICTURES}/leave-out.png` })
    await leave.click()
    await rule.getByText('Left out on this job').waitFor()
    await rule.getByText('Tested by I. Spector, certificate 12').waitFor()
    if (process.env.COATWRIGHT_PICTURES)
      await page.screenshot({ path: `${process.env.COATWRIGHT_PICTURES}/left-out.png` })

    await page.keyboard.press('Alt+7')
    const cover = page.frameLocator('iframe').locator('section.sheet').first()
    await cover.getByText('Safety rules left out').waitFor()
    expect(await cover.textContent()).toContain('report R-7')
  },
)
