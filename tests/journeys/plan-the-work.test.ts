import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

const jobFile = join(import.meta.dirname, '..', '..', 'demo-data', 'l-shaped-room.json')

/** The room of the demonstration jobs with three windows, opened at its calendar with a first plan. */
async function openCalendar(page: Page): Promise<void> {
  await page.getByTestId('house-figures').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page
    .getByRole('dialog', { name: 'Book of jobs' })
    .locator('input[type="file"]')
    .setInputFiles(jobFile)
  await page.locator('footer').getByText('One L-shaped room').waitFor()
  await page.keyboard.press('Alt+5')
  await firstPlan(page)
  await closer(page)
}

/** From the whole job to hours, where passes can be dragged. */
async function closer(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Whole job' }).click()
  await page.getByRole('region', { name: /^The plan\. Arrow keys/ }).waitFor()
}

async function firstPlan(page: Page): Promise<void> {
  await page
    .getByText(/proved best|from the best possible/i)
    .first()
    .waitFor()
}

function bars(page: Page): Locator {
  return page.locator('[data-lane^="room-"] [data-task]')
}

function tried(page: Page): Locator {
  return page.getByRole('region', { name: 'What is being tried' })
}

async function textOf(place: Locator): Promise<string> {
  return (await place.allInnerTexts()).join(' ')
}

async function compared(page: Page): Promise<void> {
  await tried(page).getByText('It holds: every rule was checked.').waitFor()
}

/** The word for the picked task's start in its paper. */
async function pinnedStart(page: Page): Promise<string> {
  return page.getByLabel(/^Pinned to start|^Pin its start to/).inputValue()
}

function minutesBetween(from: string, to: string): number {
  return (Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 60_000
}

browserJourney(
  'a task is pinned and freed by keyboard alone, each compared before it is taken',
  async ({ page }) => {
    await openCalendar(page)
    const plan = page.getByRole('region', { name: /^The plan\. Arrow keys/ })
    await plan.locator('[data-task][tabindex="0"]').first().focus()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowRight')
    const picked = page.getByRole('region', { name: 'The pass picked' })
    await picked.getByRole('heading', { name: 'Waits for' }).waitFor()
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-pressed')))
      .toBe('true')
    const before = await pinnedStart(page)

    await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('Shift+ArrowRight')
    await compared(page)
    // Twice a quarter of an hour, though the present plan is still the one drawn.
    expect(minutesBetween(before, await pinnedStart(page))).toBe(30)
    await page.locator('[data-lane^="room-"] .plan-ghost').waitFor()
    await tried(page).getByText('Present plan').waitFor()
    await tried(page).getByRole('button', { name: 'Take it' }).press('Enter')
    await page.getByRole('button', { name: /^Undo: Pin/ }).waitFor()
    await expect.poll(() => pinnedStart(page)).not.toBe(before)
    await expect.poll(() => page.locator('[data-lane^="room-"] circle.plan-pin').count()).toBe(1)

    await picked.getByRole('button', { name: 'Unpin' }).press('Enter')
    await compared(page)
    await tried(page).getByRole('button', { name: 'Cancel' }).press('Enter')
    await expect.poll(() => tried(page).count()).toBe(0)
    await expect.poll(() => page.locator('[data-lane^="room-"] circle.plan-pin').count()).toBe(1)
  },
)

browserJourney(
  'a task dragged with the mouse says where it would be and what is in its way',
  async ({ page }) => {
    await openCalendar(page)
    const bar = bars(page).nth(3)
    const box = await bar.boundingBox()
    if (box === null) throw new Error('the task is not shown')
    const [x, y] = [box.x + Math.min(4, box.width / 2), box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x - 45, y, { steps: 5 })
    await page.getByText(/for this something else has to move\./).waitFor()
    await page.mouse.up()
    await tried(page)
      .getByText(/^Pin “/)
      .waitFor()
    await page.keyboard.press('Escape')
    await tried(page).getByRole('button', { name: 'Cancel' }).click()
    await expect.poll(() => tried(page).count()).toBe(0)
  },
)

browserJourney(
  'another start is compared with the plan, and the accepted plan stays as it was',
  async (program) => {
    let { page } = program
    await openCalendar(page)
    const present = page.locator('.plan-status strong')
    const dates = await textOf(present)
    await page.getByRole('button', { name: 'Accept this plan', exact: true }).click()
    const accepting = page.getByRole('region', { name: 'Accepting' })
    const accepted = accepting.getByText(/^Accepted .*keeps all it promised/)
    await accepted.waitFor()
    // Accepting what is shown does not take it away while it is looked at anew.
    expect(await bars(page).count()).toBeGreaterThan(0)
    expect(await textOf(accepted)).toContain(dates)

    await page.getByLabel('Work starts on').first().fill('2027-04-12')
    await page.keyboard.press('Enter')
    await compared(page)
    await tried(page)
      .getByRole('row', { name: /^Moved of what was accepted 0 [1-9]/ })
      .waitFor()
    await tried(page).getByRole('button', { name: 'Show this plan' }).click()
    await page.getByText('With what is being tried:').waitFor()
    await tried(page).getByRole('button', { name: 'Take it' }).click()
    await accepting.getByText(/The plan now moves \d+ of what it promised\./).waitFor()
    expect(await textOf(accepting.getByText(/^Accepted \w+ .*:/))).toContain(dates)

    await page.locator('[data-stored="stored"]').waitFor()
    await program.restart()
    page = program.page
    await page.locator('footer').getByText('One L-shaped room').waitFor()
    await page.keyboard.press('Alt+5')
    await firstPlan(page)
    const again = page.getByRole('region', { name: 'Accepting' }).getByText(/^Accepted \w+ .*:/)
    expect(await textOf(again)).toContain(dates)
  },
)

browserJourney('the whole job is seen at once, and one task closer', async ({ page }) => {
  await openCalendar(page)
  await page.getByRole('button', { name: 'Whole job' }).click()
  const whole = page.getByRole('region', { name: 'The whole job' })
  // The phases of the room, by their names, in the order of the work; the first is walked to and picked by keyboard.
  await whole
    .getByRole('button', { name: /: prepare, / })
    .first()
    .waitFor()
  for (const phase of ['ceiling', 'woodwork', 'walls', 'put back']) {
    expect(await whole.getByRole('button', { name: new RegExp(`: ${phase}, `) }).count()).toBeGreaterThan(0)
  }
  await whole.locator('[role="button"][tabindex="0"]').focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Enter')
  await page.getByRole('region', { name: 'The pass picked' }).getByText('Waits for').waitFor()
  await closer(page)
  const plan = page.getByRole('region', { name: /^The plan\. Arrow keys/ })
  await expect
    .poll(() => plan.evaluate((element) => element.scrollWidth - element.clientWidth))
    .toBeGreaterThan(0)
  // From the paper of one task to its neighbour, wherever that is drawn.
  await bars(page).first().click()
  await page.locator('.neighbours button').last().click()
  await expect
    .poll(() => page.locator('[data-lane^="room-"] .plan-bar-picked').first().isVisible())
    .toBe(true)
})

browserJourney(
  'another painter is tried where the crew is written down, and taken as one action',
  async ({ page }) => {
    await openCalendar(page)
    await page.getByRole('tab', { name: 'Crew' }).click()
    await page.getByRole('button', { name: 'Add a person' }).click()
    await compared(page)
    await page.getByRole('button', { name: 'Take New painter off the crew' }).click()
    await expect.poll(() => tried(page).count()).toBe(0)
    await page.getByRole('button', { name: 'Add a person' }).click()
    await page.getByLabel('Name', { exact: true }).fill('Sam')
    await page.keyboard.press('Enter')
    await compared(page)
    await tried(page).getByRole('button', { name: 'Take it' }).click()
    await page.getByRole('button', { name: 'Undo: Add Sam' }).waitFor()
    await page.getByRole('tab', { name: 'Plan', exact: true }).click()
    await page.locator('[data-lane^="person-"]').getByText('Sam', { exact: true }).waitFor()
  },
)
