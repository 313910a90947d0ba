import { expect, type Page, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { askDatabase } from '../support/ask-database.ts'
import { bookAtNight } from '../support/book-visits.ts'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { drive, NO_NUMBER } from '../support/typed-texts.ts'
import { answerAll } from '../support/walk-visit.ts'

test.use({ serviceWorkers: 'block' })

/** Today and so many days later where the demo's company is, 'YYYY-MM-DD'. */
async function dayAt(siteId: string, later = 0): Promise<string> {
  const [row] = await askDatabase<{ day: string }>(
    `select to_char((now() at time zone c.time_zone)::date + $2::int, 'YYYY-MM-DD') as day from site s join company c on c.id = s.company_id where s.id = $1`,
    [siteId, later],
  )
  return row?.day ?? ''
}

/** The place of a job. */
async function placeOf(jobId: string) {
  const [row] = await askDatabase<{ siteId: string; label: string }>(
    `select s.id as "siteId", s.label from job j join site s on s.id = j.site_id where j.id = $1`,
    [jobId],
  )
  if (!row) throw new Error('the job has no place')
  return row
}

/** Gives a visit of tonight to another job: as if the office had booked that one. */
const bookInstead = (visitId: string, jobId: string) =>
  askDatabase(
    `with old as (select job_id from visit where id = $1),
       moved as (update visit set job_id = $2 where id = $1 returning id),
       booked as (update job set state = 'booked', version = version + 1, created_at = now() - interval '2 days' where id = $2 returning id),
       gone as (update job set state = 'called-off', state_reason = 'booked otherwise' where id = (select job_id from old) returning id)
     select moved.id from moved, booked, gone`,
    [visitId, jobId],
  )

/** Works through the steps: what was measured before and after the softener is typed, the rest is answered with the first there is. */
async function workThrough(page: Page): Promise<void> {
  const closing = page.getByRole('heading', { name: 'How did the visit end?' })
  const head = page.getByRole('heading', { level: 1 })
  for (let step = 0; step < 12 && !(await closing.isVisible()); step++) {
    const before = (await head.textContent()) ?? ''
    for (const [label, value] of [
      [/raw water hardness/i, '19'],
      [/hardness at the valve outlet/i, '0.5'],
    ] as const) {
      const field = page.getByRole('textbox', { name: label })
      if ((await field.count()) > 0) await field.first().fill(value)
    }
    for (let tries = 0; tries < 3 && (await head.textContent()) === before && !(await closing.isVisible()); tries++) {
      await answerAll(page, tries)
      await page.getByRole('button', { name: /Next step|Close out/ }).click()
    }
    await expect(head.filter({ hasNotText: before }).or(closing).first()).toBeVisible()
  }
}

test('an agreement: added at its site, approved in its month, done by a visit, renewed before it ends', async ({ page, browser }) => {
  test.setTimeout(240_000)
  const [night] = await bookAtNight(['annual-visit'], { atBeds: ['annual-visit'], from: 90, hour: 10 })
  if (!night) throw new Error('no visit could be booked')
  const { siteId, label } = await placeOf(night.jobId)

  // The office writes it down; nothing before today is asked for.
  await signIn(page, 'dispatcher')
  await page.goto(`/sites/${siteId}`)
  await page.getByRole('button', { name: 'Add an agreement' }).click()
  const form = page.getByRole('dialog', { name: 'Add an agreement' })
  await form.getByLabel('How often').selectOption({ label: 'Every year' })
  await form.getByLabel('First due').fill(await dayAt(siteId))
  await form.getByLabel('Agreed until').fill(await dayAt(siteId, 20))
  const price = form.getByLabel('Price', { exact: true })
  await drive(price, NO_NUMBER)
  await price.fill('185')
  await form.getByLabel('Notes for the job').fill('Salt goes in the shed')
  await form.getByRole('button', { name: 'Add agreement' }).click()
  const turns = page.getByRole('list', { name: 'When due: Regular visits' })
  await expect(turns.getByText('to come').first()).toBeVisible()
  await expect(page.getByText(/\$185(\.00)? a year/)).toBeVisible()

  // A person looks at the month and approves it.
  await page.goto('/rounds')
  // On the last days of a month the crews have no hours left in it, and a yearly visit moves on.
  const month = page.getByLabel('Month', { exact: true })
  const its =
    (await month
      .locator('option')
      .filter({ hasText: /: [1-9]\d*$/ })
      .first()
      .getAttribute('value')) ?? ''
  await month.selectOption(its)
  const row = page.getByRole('table', { name: 'Due in the month' }).getByRole('row').filter({ hasText: label })
  await expect(row.getByText('to approve')).toBeVisible()
  await expectAccessible(page, 'rounds')
  await page.getByRole('button', { name: /^Add 1 job for/ }).click()
  await expect(page.getByText('1 job added.')).toBeVisible()
  const jobHref = (await row.locator('a[href^="/jobs/"]').getAttribute('href')) ?? ''
  const jobId = jobHref.split('/').at(-1) ?? ''
  await page.goto(jobHref)
  await expect(page.getByText(/Regular visits, due /)).toBeVisible()
  await expect(page.getByText('Salt goes in the shed')).toBeVisible()

  // The crew does it; what was measured stands beside the turn.
  expect(await bookInstead(night.visitId, jobId)).toHaveLength(1)
  const field = await browser.newContext({ viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' })
  const tablet = await field.newPage()
  await signIn(tablet, 'technician')
  await tablet.goto(`/visits/${night.visitId}`)
  await startVisit(tablet, /^(Start|Resume) visit$/)
  await workThrough(tablet)
  await tablet.getByRole('radio', { name: /^Done/ }).check()
  await tablet.getByRole('button', { name: 'Finish visit' }).click()
  await expect(tablet.getByText('Closed out: done. Sent.')).toBeVisible({ timeout: 30_000 })
  await tablet.goto(`/sites/${siteId}`)
  await expect(tablet.getByRole('heading', { name: 'History' })).toBeVisible()
  await expect(tablet.getByRole('button', { name: 'Add an agreement' })).toHaveCount(0)
  await field.close()
  await page.goto(`/sites/${siteId}`)
  await expect(page.getByText(/softened water 0\.5/)).toBeVisible()

  // It ends soon: the list says so with its price, and renews it.
  await page.goto('/rounds')
  await month.selectOption(its)
  await expect(row.getByText('done', { exact: true })).toBeVisible()
  const ending = page.getByRole('list', { name: 'Agreements that end soon' }).getByRole('listitem').filter({ hasText: label })
  await expect(ending.getByText(/\$185(\.00)? a year/)).toBeVisible()
  await ending.getByRole('button', { name: /^Renew/ }).click()
  const renew = page.getByRole('dialog', { name: 'Renew the agreement' })
  await renew.getByLabel('Price', { exact: true }).fill('199')
  await renew.getByRole('button', { name: 'Renew', exact: true }).click()
  await expect(ending).toHaveCount(0)
})
