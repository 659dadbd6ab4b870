import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

browserJourney(
  'the house is looked at day by day, a wall picked in the picture gets a color, and a morning is ticked',
  async ({ page }) => {
    const goTo = (station: string) =>
      page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
    await page.getByTestId('house-figures').waitFor()
    await goTo('Finish')
    const house = page.getByRole('img', { name: /^The house in its colors/ })
    await house.waitFor()
    await house.getByText('Kitchen', { exact: true }).waitFor()
    const kitchen = house.locator('polygon', { hasText: 'Kitchen: ceiling' })
    const clickIn = async (across: (width: number) => number, down: number) => {
      const box = await kitchen.boundingBox()
      if (box === null) throw new Error('the kitchen is not drawn')
      await page.mouse.click(box.x + across(box.width), box.y + box.height * down)
    }
    // Inside its left line, away from the door, lies a wall; the middle is the ceiling.
    await clickIn(() => 9, 0.7)
    await page.getByRole('toolbar', { name: 'Color of Kitchen: walls' }).waitFor()
    await clickIn((width) => width / 2, 0.5)
    const palette = page.getByRole('toolbar', { name: 'Color of Kitchen: ceiling' })
    await palette.getByRole('button', { name: 'Morning blue' }).click()
    await expect
      .poll(() => palette.getByRole('button', { name: 'Morning blue' }).getAttribute('aria-pressed'))
      .toBe('true')
    await page.getByRole('button', { name: 'Ceiling: here · reset to the default' }).waitFor()
    const changed = page.getByRole('region', { name: 'What changed' })
    await changed.getByText(/ steps? changed in Kitchen: /).waitFor()
    await changed.getByRole('button', { name: 'By room' }).click()
    await changed.getByRole('row', { name: /^Kitchen/ }).waitFor()
    await changed.getByRole('button', { name: 'Close what changed' }).click()
    await changed.waitFor({ state: 'detached' })

    await page.getByRole('button', { name: 'Keep these colors as a scheme' }).click()
    await page.getByRole('textbox', { name: 'Name of the scheme' }).fill('Blue kitchen')
    await page.keyboard.press('Enter')
    const pressed = (color: string) =>
      palette.getByRole('button', { name: color }).getAttribute('aria-pressed')
    await palette.getByRole('button', { name: 'Clay' }).click()
    await expect.poll(() => pressed('Clay')).toBe('true')
    await page.getByRole('button', { name: /Beside it$/ }).click()
    await page.getByRole('option', { name: 'Blue kitchen' }).click()
    await page.getByRole('figure', { name: 'Now' }).waitFor()
    await page.getByRole('figure', { name: 'Blue kitchen' }).waitFor()
    await page.getByRole('button', { name: 'Take over “Blue kitchen”' }).click()
    await expect.poll(() => pressed('Morning blue')).toBe('true')
    await page.getByRole('button', { name: 'Undo: Take over the colors of “Blue kitchen”' }).click()
    await expect.poll(() => pressed('Clay')).toBe('true')

    await goTo('Calendar')
    await page.getByRole('button', { name: 'House on a day' }).click()
    const day = page.getByRole('slider', { name: 'Day' })
    await day.focus()
    await page.keyboard.press('Home')
    const first = await day.getAttribute('aria-valuetext')
    await page.getByRole('img', { name: new RegExp(`^${first}\\. Not begun:.* In work:`) }).waitFor()
    await page.keyboard.press('End')
    await page.getByRole('img', { name: /\. Ready: / }).waitFor()
    await page.getByRole('button', { name: 'Play the days' }).click()
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    // A plan that is still looked for may put another pass first between the reading of a line and its press.
    await page.getByRole('button', { name: 'Accept this plan', exact: true }).click()
    await page
      .getByRole('region', { name: 'Accepting' })
      .getByText(/^Accepted .*:/)
      .waitFor()

    await goTo('Site')
    const today = page.getByRole('region', { name: 'Today' })
    await today
      .getByRole('button', { name: /: check off as done$/ })
      .first()
      .waitFor()
    const line = today.getByRole('button', { name: /^Check off down to here: / }).first()
    const name = ((await line.getAttribute('aria-label')) ?? '').replace('Check off down to here: ', '')
    await line.click()
    await page.getByRole('button', { name: `Undo: Check off down to ${name}` }).waitFor()
  },
)
