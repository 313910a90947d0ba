import { expect, type Locator, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { signIn } from '../support/sign-in.ts'

test('a dispatcher has a week planned, takes one crew’s day of it by keyboard, and finds it on the day sheet; a colleague’s page shows it', async ({
  page,
  browser,
}) => {
  test.setTimeout(180_000)
  await signIn(page, 'dispatcher')
  await page.goto('/day-sheets')
  const start = page.getByRole('button', { name: 'Plan the week' })
  // Weekends have no sheets: go on to a day that does.
  for (let day = 0; day < 4 && !(await start.isVisible()); day++) {
    await page.getByRole('link', { name: 'Next day' }).click()
    await expect(page.locator('[data-open]').or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
  }
  await start.click()
  await expect(page.getByRole('heading', { name: 'A plan for the days ahead' })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Accept/ })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('row', { name: /Driving/ })).toBeVisible()

  // One tick for each crew's day, above its changes.
  const crewDays = page.getByRole('checkbox', { name: /: (one change|all \d+ changes)$/ })
  const place = page.getByRole('checkbox', { name: /^Book / }).first()
  const textOf = (box: Locator) => box.evaluate((one) => one.closest('label')?.textContent ?? '')
  const [, site = '', crew = ''] = /^Book (.+?): (.+?), /.exec(await textOf(place)) ?? []
  // What the crew's day becomes is taken whole: a visit alone may have its hour only because others of that day give way.
  const dayOf = (box: Locator) => box.evaluate((one) => one.closest('fieldset')?.querySelector('legend')?.textContent)
  const day = await dayOf(place)
  const count = await crewDays.count()
  for (let n = 0; n < count; n++) {
    const box = crewDays.nth(n)
    if ((await dayOf(box)) === day && (await textOf(box)).startsWith(`${crew}:`)) continue
    await box.focus()
    await page.keyboard.press('Space')
  }
  const accept = page.getByRole('button', { name: /^Accept/ })
  await accept.focus()
  await page.keyboard.press('Enter')
  // What was left stays open, where anything was.
  await expect(page.getByText(/(is|are) on the day sheets/)).toBeVisible()
  if (count > 1) await expect(page.getByText('What you left is still open.')).toBeVisible()

  const office = await browser.newContext()
  const colleague = await office.newPage()
  await signIn(colleague, 'dispatcher')
  await colleague.goto(`${page.url().split('/day-sheets')[0]}/jobs`)
  await expect(colleague.getByRole('link', { name: site }).first()).toBeHidden()
  expect(crew).not.toBe('')
  await office.close()
})

test('a dispatcher says who of a crew is missing; once the plan is accepted the sheet goes on without them', async ({ page }) => {
  await signIn(page, 'dispatcher')
  // Nearly three weeks ahead, where no other journey goes.
  for (let ahead = 17; ahead < 21; ahead++) {
    await page.goto(`/day-sheets?day=${new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10)}`)
    const pair = page.getByRole('button', { name: /^Ines & Tomas/ })
    await expect(pair.or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
    if (!(await pair.isVisible())) continue
    await pair.click()
    break
  }
  await expect(page.getByText('Ines Calder, Tomas Reyes')).toBeVisible()
  await page.getByRole('button', { name: 'Crew or vehicle problem' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByText('Some of its people').click()
  await expect(dialog.getByRole('button', { name: 'Find another plan' })).toBeDisabled()
  await dialog.getByLabel('Ines Calder').check()
  await dialog.getByRole('button', { name: 'Find another plan' }).click()
  await expect(page.getByRole('heading', { name: 'When people are missing' })).toBeVisible()
  await expect(page.getByText('The missing people come off the sheet')).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Accept', exact: true }).click()
  await expect(page.getByText('are on the day sheets')).toBeVisible()
  await page.goBack() // to the sheet as it was left, open
  await expect(page.getByText('Tomas Reyes', { exact: true })).toBeVisible()
  await expect(page.getByText('Ines Calder')).toHaveCount(0)
})

test('the owner wants days that end on time: the plan says how many will not, and what the same week would be without', async ({
  page,
  browser,
}) => {
  test.setTimeout(180_000)
  const home = await browser.newContext()
  const owner = await home.newPage()
  await signIn(owner, 'owner')
  const fill = async (days: string) => {
    await owner.goto('/firm')
    await owner.getByRole('button', { name: 'Edit: hours, yard and crews' }).click()
    await owner.getByRole('dialog').getByLabel('Days are planned').selectOption({ label: days })
    await owner.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
    await expect(owner.getByRole('dialog')).toHaveCount(0)
    await expect(owner.getByText(days, { exact: true })).toBeVisible()
  }
  await fill('late at most one day in ten')
  await signIn(page, 'dispatcher')
  await page.goto('/day-sheets')
  const start = page.getByRole('button', { name: 'Plan the week' })
  for (let day = 0; day < 4 && !(await start.isVisible()); day++) {
    await page.getByRole('link', { name: 'Next day' }).click()
    await expect(page.locator('[data-open]').or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
  }
  await start.click()
  await expect(
    page.getByText(/^Planned as long as usual, it would be .+ of driving, .+ waiting and about \d+ of \d+ days ending late\.$/),
  ).toBeVisible({ timeout: 90_000 })
  const late = page.getByRole('row', { name: /^Days likely to end late/ })
  // Each figure stands behind its column's name, which a phone shows.
  const [now, planned] = (await late.getByRole('cell').allTextContents()).slice(-2).map((text) => Number(/[\d.]+$/.exec(text)?.[0]))
  // It never makes more days end late than the sheets do as they stand.
  expect(planned).toBeLessThanOrEqual(now ?? Number.NaN)
  await fill('as long as usual')
  await home.close()
})

test('who goes with whom is asked for a day without sheets, by keyboard; the crews chosen have their sheets, and nobody stands on two', async ({
  page,
}) => {
  test.setTimeout(120_000)
  await signIn(page, 'dispatcher')
  // Months ahead, where nobody has opened a sheet; a Tuesday.
  const tuesday = new Date(Date.now() + 100 * 86_400_000)
  tuesday.setUTCDate(tuesday.getUTCDate() + ((9 - tuesday.getUTCDay()) % 7))
  const day = tuesday.toISOString().slice(0, 10)
  await page.goto(`/day-sheets?day=${day}`)
  const ask = page.getByRole('button', { name: 'Who goes with whom?' })
  await ask.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Who goes with whom' })).toBeVisible()
  const open = page.getByRole('button', { name: /^Open (\d+ sheets|this sheet)$/ })
  await expect(open).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('columnheader', { name: 'Everyone alone' })).toBeVisible()
  // Whoever has nothing to do that day is left out from the first.
  const crews = page.getByRole('checkbox', { name: /, with /, checked: true })
  const offered = await crews.count()
  expect(offered).toBeGreaterThan(1)
  await crews.first().focus()
  await page.keyboard.press('Space')
  await open.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByText(/: its sheet is open\.$/)).toHaveCount(offered - 1)
  await page.getByRole('link', { name: /^To the day’s sheets/ }).click()
  await expect(page.locator('[data-open]')).toBeVisible()
  const rows = await askDatabase<{ sheets: number; people: number; twice: number }>(
    `select count(distinct d.id)::int as sheets, count(m.id)::int as people, (count(m.id) - count(distinct m.colleague_id))::int as twice
     from crew_day d join crew_day_member m on m.company_id = d.company_id and m.crew_day_id = d.id
     where d.day = $1 and d.company_id = (select id from company where name = 'Larkmoor Soft Water')`,
    [day],
  )
  expect(rows[0]).toMatchObject({ sheets: offered - 1, twice: 0 })
})
