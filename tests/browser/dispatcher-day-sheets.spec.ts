import { expect, type Page, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

/** Goes on by days, at least so many, to one with sheets: weekends have none. */
async function toWorkingDay(page: Page, atLeast: number): Promise<void> {
  for (let days = 1; days <= atLeast + 3; days++) {
    const before = page.url()
    await page.getByRole('link', { name: 'Next day' }).click()
    await expect(page).not.toHaveURL(before)
    const sheet = page.locator('[data-open]')
    await expect(sheet.or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
    if (days >= atLeast && (await sheet.isVisible())) return
  }
}

/** Opens sheet after sheet, from the day after tomorrow on, until one has room for a job that waits: what fits where hangs on the weekday and on what was booked before. */
async function toRoom(page: Page) {
  const place = page.getByRole('button', { name: /^Book / }).first()
  for (let days = 0; days < 4; days++) {
    await toWorkingDay(page, days === 0 ? 2 : 1)
    const folded = page.locator('[data-line][aria-expanded="false"]')
    const crews = await folded.locator('strong').allTextContents()
    for (const crew of ['', ...crews]) {
      if (crew) await folded.filter({ has: page.getByText(crew, { exact: true }) }).click()
      // What fits is asked for once the sheet is open.
      if (
        await place.waitFor({ timeout: 4_000 }).then(
          () => true,
          () => false,
        )
      )
        return place
    }
  }
  return place
}

/** Asks the API as the signed-in person, past the screens. */
async function ask(page: Page, path: string, json: unknown): Promise<{ status: number; json: Record<string, never> }> {
  const answer = await page.request.post(`/api/rpc/${path}`, { data: { json }, headers: { 'x-csrf-token': 'orpc' } })
  return { status: answer.status(), json: ((await answer.json()) as { json: Record<string, never> }).json }
}

test('a dispatcher takes a job from inside the sheet; a second dispatcher’s page shows it by itself; undo takes it off again', async ({
  page,
  browser,
}) => {
  await signIn(page, 'dispatcher')
  await expect(page).toHaveURL(/day-sheets/)
  const place = await toRoom(page)
  await expect(place).toBeVisible()
  const label = ((await place.getAttribute('aria-label')) ?? '').replace(/^Book /, '').replace(/ at \d{1,2}:\d\d\s[AP]M$/, '')

  const office = await browser.newContext()
  const second = await office.newPage()
  await signIn(second, 'dispatcher')
  await second.goto(page.url())
  await expect(second.getByRole('button', { name: `Move ${label}` })).toHaveCount(0)

  await place.click()
  await expect(page.getByText(`${label} is booked.`)).toBeVisible()
  await expect(page.getByRole('button', { name: `Move ${label}` })).toBeVisible()
  await expect(second.getByRole('button', { name: `Move ${label}` })).toBeVisible({ timeout: 4_000 })

  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('button', { name: `Move ${label}` })).toHaveCount(0)
  await expect(second.getByRole('button', { name: `Move ${label}` })).toHaveCount(0, { timeout: 4_000 })
  await office.close()
})

test('when two dispatchers move one visit, the second sees both times and chooses', async ({ page, browser }) => {
  await signIn(page, 'dispatcher')
  await toWorkingDay(page, 1)
  const move = page.getByRole('button', { name: /^Move / }).first()
  const name = (await move.getAttribute('aria-label')) ?? ''
  const office = await browser.newContext()
  const second = await office.newPage()
  await signIn(second, 'dispatcher')
  await second.goto(page.url())
  await second.getByRole('button', { name }).click()
  const stood = await second.getByLabel('Begins at').inputValue()
  const [theirs = '', mine = ''] = ['15:00', '14:00', '13:00'].filter((time) => time !== stood)
  // Shown as the American firm reads them.
  const shown = (time: string) => `${Number(time.slice(0, 2)) - 12}:${time.slice(3)}\\sPM`

  await move.click()
  await page.getByLabel('Begins at').fill(theirs)
  await page.getByRole('button', { name: 'Move', exact: true }).click()
  await expect(page.getByText('is moved.')).toBeVisible()

  await second.getByLabel('Begins at').fill(mine)
  await second.getByRole('button', { name: 'Move', exact: true }).click()
  const choice = second.getByRole('dialog', { name: 'Changed by someone else meanwhile' })
  await expect(choice.getByText(new RegExp(`booked, ${shown(theirs)}`))).toBeVisible()
  await expect(choice.getByText(new RegExp(`^${shown(mine)}$`))).toBeVisible()
  await choice.getByRole('button', { name: 'Use mine' }).click()
  await expect(second.getByText('is moved.')).toBeVisible()

  // Back where it stood, so that the demo's day is as before.
  const line = second.getByRole('listitem').filter({ has: second.getByRole('button', { name }) })
  await expect(line.getByText(new RegExp(`^${shown(mine)}$`))).toBeVisible()
  await second.getByRole('button', { name }).click()
  await expect(second.getByLabel('Begins at')).toHaveValue(mine)
  await second.getByLabel('Begins at').fill(stood)
  await second.getByRole('button', { name: 'Move', exact: true }).click()
  await expect(second.getByText('is moved.')).toHaveCount(2)
  await office.close()
})

test('the sheets can be worked by keyboard alone', async ({ page }) => {
  await signIn(page, 'dispatcher')
  const open = page.locator('[data-open]')
  await expect(open).toBeVisible()
  const first = await open.textContent()
  await open.focus()
  // Down past the lines of the open sheet to the next folded one, then open it.
  for (let i = 0; i < 40; i++) {
    await page.keyboard.press('ArrowDown')
    const folded = await page.evaluate(() => document.activeElement?.getAttribute('aria-expanded') === 'false')
    if (folded) break
  }
  await page.keyboard.press('Enter')
  await expect(open).not.toHaveText(first ?? '')
})

test('a job’s page lists its best places and says why others do not fit', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/jobs?kind=rebed')
  await page.getByRole('table').getByRole('link').first().click()
  await expect(page.getByRole('heading', { name: 'Best places' })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Book / }).first()).toBeVisible()
  await page.getByText('Sheets it doesn’t fit, and why').click()
  // One crew of the demo works alone, and a rebed takes two.
  await expect(page.getByText('Needs 2 people; this sheet has one person.')).toBeVisible()
})

test('of 200 requests for one crew and time at once, one is booked and 199 get a 409', async ({ page }) => {
  await signIn(page, 'dispatcher')
  const id = () => crypto.randomUUID()
  // A day of its own, so that nothing else stands there.
  const day = new Date(Date.now() + 400 * 86_400_000 + Math.floor(Math.random() * 300) * 86_400_000).toISOString().slice(0, 10)
  const { colleagues } = (await ask(page, 'daySheets/crewChoices', { day })).json as unknown as { colleagues: { id: string }[] }
  const colleagueIds = colleagues.slice(0, 1).map((one) => one.id)
  const sheet = { commandId: id(), day, name: `Race ${id().slice(0, 4)}`, colleagueIds, vehicleId: null, from: '08:00', until: '17:00' }
  const { crewDayId } = (await ask(page, 'daySheets/open', sheet)).json as unknown as { crewDayId: string }
  const [first] = ((await ask(page, 'jobs/list', { state: 'proposed', limit: 1 })).json as unknown as { rows: { siteId: string }[] }).rows
  const jobs: string[] = []
  for (let n = 0; n < 5; n++) {
    const proposed = await ask(page, 'jobs/proposeOne', { commandId: id(), siteId: first?.siteId, kind: 'inspection' })
    jobs.push((proposed.json as unknown as { jobId: string }).jobId)
  }
  // The day may be one on which nobody works: that is confirmed, as a dispatcher can.
  const attempts = Array.from({ length: 200 }, (_, n) =>
    ask(page, 'jobs/book', { commandId: id(), jobId: jobs[n % jobs.length], jobVersion: 1, crewDayId, at: '10:00', confirmed: ['crew'] }),
  )
  const answers = await Promise.all(attempts)
  expect(answers.map((one) => one.status).sort()).toEqual([200, ...Array.from({ length: 199 }, () => 409)])
  const won = answers.find((one) => one.status === 200)?.json as unknown as { jobId: string }
  for (const jobId of jobs)
    await ask(page, 'jobs/callOff', { commandId: id(), jobId, version: jobId === won.jobId ? 2 : 1, reason: 'was only a trial' })
})
