import { expect, type Page, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { askDatabase } from '../support/ask-database.ts'
import { bookAtNight } from '../support/book-visits.ts'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { drive, halves, NO_NUMBER, twelveHundred } from '../support/typed-texts.ts'
import { answerAll } from '../support/walk-visit.ts'

test.use({ viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' })

const NEXT = 'Next step'

/** Answers and goes on until a step of this title is shown; resolves to the titles of the steps before it. */
async function walkTo(page: Page, title: string): Promise<string[]> {
  const head = page.getByRole('heading', { level: 1 })
  const passed: string[] = []
  for (let step = 0; step < 40 && (await head.textContent()) !== title; step++) {
    const before = (await head.textContent()) ?? ''
    passed.push(before)
    for (let tries = 0; tries < 3 && (await head.textContent()) === before; tries++) {
      await answerAll(page, tries)
      await page.getByRole('button', { name: NEXT }).click()
    }
    await expect(head).not.toHaveText(before)
  }
  await expect(head).toHaveText(title)
  return passed
}

/** The office books the job of a visit again, half an hour later. */
async function bookAgain(visitId: string): Promise<string> {
  const [made] = await askDatabase<{ id: string }>(
    `with first as (select * from visit where id = $1),
       job_of as (update job set state = 'booked' where id = (select job_id from first) returning id),
       again as (insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state)
         select company_id, gen_random_uuid(), job_id, crew_day_id, ends_at + interval '30 minutes', ends_at + interval '50 minutes', 'booked' from first, job_of returning *),
       crew as (insert into assignment (company_id, id, visit_id, colleague_id, starts_at, ends_at)
         select again.company_id, gen_random_uuid(), again.id, a.colleague_id, again.starts_at, again.ends_at from again, assignment a where a.visit_id = $1 returning id)
     select id from again`,
    [visitId],
  )
  if (!made) throw new Error('the job could not be booked again')
  return made.id
}

test('a stop answer turns the page into the safe ending, costs one tap back, and closes as what fits; whoever returns finds the tank empty', async ({
  page,
}) => {
  test.setTimeout(300_000)
  await signIn(page, 'technician')
  const [visit] = await bookAtNight(['rebed'], { atBeds: ['rebed'], from: 70, hour: 7 })
  await page.goto(`/visits/${visit?.visitId}`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Rebed at')
  await startVisit(page)
  const head = page.getByRole('heading', { level: 1 })
  await expect(head).toHaveText('Safe to start?')

  // One measurement of another tank than is on record: its kit at once, a touch away from any step.
  await page.getByRole('navigation', { name: 'This visit' }).getByRole('button', { name: 'Kit' }).click()
  const kit = page.getByRole('dialog', { name: 'Kit' })
  const lines = kit.getByRole('listitem')
  const recorded = await lines.allTextContents()
  const height = kit.getByRole('textbox', { name: 'Tank height found, without the valve' })
  const tooLow = { '−3': /the least is 10 in/, ...halves(/the least is 10 in/) }
  await drive(height, { abc: NO_NUMBER.abc, ...tooLow, ...twelveHundred(/the most is 120 in/), '99999': /the most is 120 in/ })
  await height.fill('40')
  await expect.poll(() => lines.allTextContents()).not.toEqual(recorded)
  await height.fill('')
  await expect.poll(() => lines.allTextContents()).toEqual(recorded)
  await page.keyboard.press('Escape')

  // Before anything was opened: left as it was found. The page turns under the answer: it is pressed, not looked at again.
  await page.getByRole('radio', { name: /Crawl space/ }).click()
  await expect(head).toHaveText('Stop: confined space')
  await expect(page.getByText('Closes as: Left as found, return needed.')).toBeVisible()
  await expect(page.getByRole('button', { name: NEXT })).toHaveCount(0)
  await page.getByRole('button', { name: 'Wrong answer, back to step 1' }).click()
  await expect(head).toHaveText('Safe to start?')

  const before = await walkTo(page, 'Rinse and inspect the tank')
  await page.getByRole('radio', { name: 'Neck or thread damaged' }).click()
  await expect(head).toHaveText(/^Stop: /)
  await expectAccessible(page, 'safe ending')
  const closeOut = page.getByRole('button', { name: /^Close out/ })
  await expect(closeOut).toBeDisabled()
  // A reload keeps it, and what was ticked.
  await page.getByRole('checkbox', { name: 'Left in bypass, and the house has water' }).check()
  await page.reload()
  await expect(head).toHaveText(/^Stop: /)
  await expect(page.getByRole('checkbox', { name: 'Left in bypass, and the house has water' })).toBeChecked()
  for (const box of await page.locator('main').getByRole('checkbox').all()) if (!(await box.isChecked())) await box.check()
  await closeOut.click()
  await expect(head).toHaveText('How did the visit end?')
  const outcomes = page.locator('main input[name=outcome]')
  expect(await outcomes.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))).toEqual(['made-safe', 'condemned'])
  await page.getByRole('radio', { name: /^Left in bypass|^Made safe/ }).check()
  await page.getByRole('textbox', { name: 'What you found' }).fill('the neck thread is worn')
  await page.getByLabel('Why it ended').selectOption('worn')
  await page.getByLabel('How you could tell').fill('soft beads')
  await page.getByRole('button', { name: 'Finish visit' }).click()
  await expect(page.getByText(/^Closed out: /)).toBeVisible({ timeout: 30_000 })

  // The tablet says so at once; the office has it once it was sent.
  const state = async () => (await askDatabase<{ state: string }>('select state from visit where id = $1', [visit?.visitId]))[0]?.state
  await expect.poll(state, { timeout: 30_000 }).toBe('closed')
  await page.goto(`/visits/${await bookAgain(visit?.visitId ?? '')}`)
  await expect(page.getByText(/^The tank is empty\. The old bed came out on /)).toBeVisible()
  await expect(page.getByText('the neck thread is worn').first()).toBeVisible()
  await startVisit(page)
  const again = await walkTo(page, 'Rinse and inspect the tank')
  // What came out then is neither measured nor carried out again.
  expect(before.filter((title) => !again.includes(title))).toHaveLength(3)
})
