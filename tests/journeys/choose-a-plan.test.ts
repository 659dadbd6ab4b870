import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function goTo(page: Page, station: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
}

async function textOf(place: Locator): Promise<string> {
  return (await place.allInnerTexts()).join(' ')
}

/** What is tried has its answer, and is taken. */
async function take(page: Page): Promise<void> {
  const tried = page.getByRole('region', { name: 'What is being tried' })
  await tried.getByText('It holds: every rule was checked.').waitFor()
  await tried.getByRole('button', { name: 'Take it' }).click()
  await expect.poll(() => tried.count()).toBe(0)
}

/** Four plans are looked for until there is one with fewer room-days, which is taken. */
async function takeTheCalmPlan(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Compare four plans' }).click()
  const choice = page.getByRole('region', { name: 'Plans to choose from' })
  await choice
    .getByText(/\d+ fewer room-days/)
    .first()
    .waitFor({ timeout: 60_000 })
  for (const name of ['Balanced', 'Soonest', 'Calmest', 'Cheapest'])
    await choice.getByRole('rowheader', { name, exact: true }).waitFor()
  const stop = choice.getByRole('button', { name: 'Stop comparing' })
  if ((await stop.count()) > 0) await stop.click({ timeout: 2000 }).catch(() => undefined)
  const roomDays = await textOf(
    choice
      .getByRole('row', { name: /^Calmest/ })
      .locator('td.number')
      .first(),
  )
  await choice.getByRole('button', { name: 'Use it: the calmest plan' }).click()
  await page.getByRole('button', { name: /^Undo: Take the calmest plan/ }).waitFor()
  await choice.getByRole('button', { name: 'Close' }).click()
  // It is the plan on screen, and what is looked for from now on only betters it.
  const shown = Number(/(\d+) room-days/.exec(await textOf(page.locator('.plan-status')))?.[1])
  expect(shown).toBeLessThanOrEqual(Number(roomDays))
}

async function addDayOff(page: Page, date: string): Promise<void> {
  await page.getByRole('tab', { name: 'Crew' }).click()
  await page.getByLabel('Add a day off').fill(date)
  await page.keyboard.press('Enter')
  await take(page)
  await page.getByRole('button', { name: `Remove the day off of ${date}` }).waitFor()
  await page.getByRole('tab', { name: 'Plan' }).click()
}

/** A pass is moved by a quarter of an hour with the keyboard and held there. */
async function movePass(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Whole job' }).click()
  const plan = page.getByRole('region', { name: /^The plan\. Arrow keys/ })
  await plan.locator('[data-task][tabindex="0"]').first().focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Shift+ArrowRight')
  await take(page)
}

function heldPins(page: Page): Locator {
  return page.locator('[data-lane^="room-"] circle.plan-pin')
}

browserJourney(
  'four plans are compared, the calm one is taken, changed and accepted, a morning is ticked, and all is found again',
  async (program) => {
    let { page } = program
    await page.getByTestId('house-figures').waitFor()
    await goTo(page, 'Calendar')
    await takeTheCalmPlan(page)
    await addDayOff(page, '2027-03-31')
    await movePass(page)

    await page.getByRole('button', { name: 'Accept this plan', exact: true }).click()
    const accepting = page.getByRole('region', { name: 'Accepting' })
    const accepted = accepting.getByText(/^Accepted .*keeps all it promised/)
    await accepted.waitFor()
    const dates = (await textOf(accepted)).split('.')[0] ?? ''

    await goTo(page, 'Site')
    const ticks = page.getByRole('button', { name: /: check off as done$/ })
    const name = ((await ticks.first().getAttribute('aria-label')) ?? '').replace(': check off as done', '')
    await ticks.first().click()
    await page.getByRole('button', { name: `${name}: take the check back` }).waitFor()
    await page.locator('[data-stored="stored"]').waitFor()

    await program.restart()
    page = program.page
    await page.getByTestId('house-figures').waitFor()
    await goTo(page, 'Site')
    await page.getByRole('button', { name: `${name}: take the check back` }).waitFor()
    await goTo(page, 'Calendar')
    await page.getByRole('heading', { name: 'Calmest plan' }).waitFor()
    await page.getByText('Plans hold to the one accepted').waitFor()
    await page.getByRole('region', { name: 'Accepting' }).getByText(dates).waitFor()
    await page.getByRole('button', { name: 'Whole job' }).click()
    await heldPins(page).first().waitFor()
    await page.getByRole('tab', { name: 'Crew' }).click()
    await page.getByRole('button', { name: 'Remove the day off of 2027-03-31' }).waitFor()
  },
)
