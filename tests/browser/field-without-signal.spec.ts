import { expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { bookAtNight, demoTechnician } from '../support/book-visits.ts'
import { cameraPicture } from '../support/camera-picture.ts'
import { ownServer } from '../support/own-server.ts'
import { signInByForm } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { keepForLater, newTablet, tooSmall } from '../support/tablet.ts'
import { answerAll } from '../support/walk-visit.ts'

const KINDS = ['delivery', 'inspection', 'repair'] as const
const NEXT = /^(Next step|Close out)$/

/** What came of the visits, counted in the database. */
const landed = (ids: string[]) =>
  askDatabase<{ kind: string; state: string; outcome: string; closeOuts: number; starts: number; aside: number; pictures: string }>(
    `select j.kind, v.state, v.outcome,
       (select count(*)::int from audit_entry a where a.entity_id = v.id and a.operation = 'jobs.take-field-command: closed out') as "closeOuts",
       (select count(*)::int from audit_entry a where a.entity_id = v.id and a.operation = 'jobs.take-field-command: started') as starts,
       (select count(*)::int from set_aside s where s.visit_id = v.id) as aside,
       (select coalesce(string_agg(p.kind || ' ' || p.state, ', ' order by p.kind), '') from picture p where p.visit_id = v.id) as pictures
     from visit v join job j on j.id = v.job_id where v.id = any($1) order by j.kind`,
    [ids],
  )

/** Walks to the closing form, answering each step. */
async function walkToEnd(page: Page): Promise<void> {
  const heading = page.getByRole('heading', { level: 1 })
  for (let step = 0; step < 20; step++) {
    const title = (await heading.textContent()) ?? ''
    if (title === 'How did the visit end?') return
    // A number that cannot be is asked back: another one.
    for (let tried = 0; tried < 3 && (await heading.textContent()) === title; tried++) {
      for (const outlet of await page
        .locator('main')
        .getByRole('textbox', { name: /outlet/i })
        .all())
        await outlet.fill('0.5')
      await answerAll(page, tried)
      await page.getByRole('button', { name: NEXT }).click()
    }
    await expect(heading).not.toHaveText(title)
  }
}

test('without a server: a cold start, three visits of different kinds done and closed, the browser killed with a photograph in its queue; with it again all is there once', async () => {
  test.setTimeout(400_000)
  const visits = await bookAtNight(KINDS, { atBeds: ['inspection', 'repair'] })
  const server = await ownServer()
  const { switchOn, switchOff, kill, close } = newTablet(server.baseURL)
  const lineOf = (page: Page, site: string, kind: RegExp) =>
    page.locator('main li a').filter({ hasText: site }).filter({ hasText: kind }).first()
  const photograph = { name: 'camera.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(await cameraPicture()) }
  try {
    await server.start()
    let page = await switchOn()
    await signInByForm(page, demoTechnician())
    await keepForLater(page, KINDS.length)
    await switchOff()
    await server.stop()

    // A cold start: nothing but what the browser kept.
    page = await switchOn()
    await page.goto('/today')
    await expect(page.getByText(/No connection\. This is from/)).toBeVisible()
    expect(await tooSmall(page)).toEqual([])
    for (const [at, { kind, site, bedId }] of visits.entries()) {
      await lineOf(page, site, new RegExp(kind, 'i')).click()
      await expect(page.getByRole('heading', { level: 1 })).toContainText(site)
      await startVisit(page, 'Start visit', NEXT)
      expect(await tooSmall(page)).toEqual([])
      // What is worked out of what the tablet keeps: the valve's settings too.
      if (bedId) {
        await page.getByRole('navigation', { name: 'This visit' }).getByRole('button', { name: 'Settings' }).click()
        const settings = page.getByRole('dialog', { name: 'Settings' })
        await expect(settings.getByRole('heading', { name: /^(Enter at the valve|Set at the timer)$/ })).toBeVisible()
        expect(await tooSmall(page)).toEqual([])
        await page.keyboard.press('Escape')
      }
      await walkToEnd(page)
      await page.getByRole('radio', { name: /^Done/ }).check()
      await page.getByLabel('Photo: as left').setInputFiles(photograph)
      await expect(page.getByRole('img', { name: 'As left' })).toBeVisible()
      if (kind === 'repair') {
        await page.getByLabel('Photo: as found').setInputFiles(photograph)
        await expect(page.getByRole('img', { name: 'As found' })).toBeVisible()
      }
      await page.getByRole('button', { name: 'Finish visit' }).click()
      await expect(page.getByText('Saved here, waiting to send.')).toBeVisible()
      await page.getByRole('link', { name: 'Back to today’s work' }).click()
      await expect(page.getByText(`Waiting to send (${2 * (at + 1)})`)).toBeVisible()
    }
    await expect(page.getByText('4 photos and signatures wait to be sent.')).toBeVisible()
    await kill()
    page = await switchOn()
    await page.goto('/today')
    await expect(page.getByText('Waiting to send (6)')).toBeVisible()
    await expect(page.getByText('4 photos and signatures wait to be sent.')).toBeVisible()
    expect((await landed(visits.map((one) => one.visitId))).map((one) => one.state)).toEqual(['booked', 'booked', 'booked'])

    await server.start()
    // By itself: the longest wait between two tries is a minute.
    await expect(page.getByText(/Waiting to send/)).toHaveCount(0, { timeout: 80_000 })
    await expect(page.getByText(/wait to be sent/)).toHaveCount(0, { timeout: 80_000 })
    await expect(page.getByText(/No connection\. This is from/)).toHaveCount(0, { timeout: 40_000 })
    const once = { state: 'closed', outcome: 'done', closeOuts: 1, starts: 1, aside: 0 }
    await expect(async () =>
      expect(await landed(visits.map((one) => one.visitId))).toEqual([
        { kind: 'delivery', ...once, pictures: 'as-left stored' },
        { kind: 'inspection', ...once, pictures: 'as-left stored' },
        { kind: 'repair', ...once, pictures: 'as-found stored, as-left stored' },
      ]),
    ).toPass({ timeout: 60_000 })
  } finally {
    await close()
    await server.stop()
  }
})
