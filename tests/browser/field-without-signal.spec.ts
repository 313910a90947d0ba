import { expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { ownServer } from '../support/own-server.ts'
import { DEMO_PEOPLE, signInByForm } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { keepForLater, newTablet, tooSmall } from '../support/tablet.ts'
import { answerAll } from '../support/walk-visit.ts'

const KINDS = ['delivery', 'inspection', 'repair'] as const
const me = DEMO_PEOPLE.find((one) => one.role === 'technician')

/** The technician's sheet of today; one of their own where the demo has none, as on a Sunday. */
async function sheetOfToday(): Promise<string> {
  const [found] = await askDatabase<{ id: string }>(
    `with who as (select w.id, w.company_id, (now() at time zone c.time_zone)::date as day from colleague w join company c on c.id = w.company_id where w.name = $1),
       found as (select d.id from who join crew_day d on d.company_id = who.company_id and d.day = who.day join crew_day_member m on m.crew_day_id = d.id and m.colleague_id = who.id limit 1),
       made as (insert into crew_day (company_id, id, day, name, starts_at, ends_at)
         select company_id, gen_random_uuid(), day, 'By night', now(), now() + interval '8 hours' from who where not exists (select from found) returning company_id, id),
       member as (insert into crew_day_member (company_id, id, crew_day_id, colleague_id)
         select made.company_id, gen_random_uuid(), made.id, who.id from made, who returning id)
     select id from found union all select id from made`,
    [me?.name],
  )
  if (!found) throw new Error('the demo has no technician on its sheets')
  return found.id
}

/** Three visits of today for the technician, at an hour of the night when nobody works: other journeys keep theirs. Answers their ids and sites by kind. */
async function bookAtNight() {
  const sheet = await sheetOfToday()
  const made = []
  for (const [at, kind] of KINDS.entries()) {
    const [one] = await askDatabase<{ visitId: string; site: string }>(
      `with who as (select id, company_id from colleague where name = $1),
         place as (select s.id, s.label from site s join who on who.company_id = s.company_id where s.archived_at is null and s.street is not null order by s.id offset 40 + $3 limit 1),
         span as (select day::timestamptz + make_interval(hours => 9, mins => 20 * $3) as starts_at from crew_day where id = $4::uuid),
         made_job as (insert into job (company_id, id, site_id, kind, state, minutes, crew_size, created_at)
           select who.company_id, gen_random_uuid(), place.id, $2, 'booked', 20, 1, now() - interval '2 days' from who, place returning *),
         made_visit as (insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state)
           select j.company_id, gen_random_uuid(), j.id, $4::uuid, span.starts_at, span.starts_at + interval '20 minutes', 'booked' from made_job j, span returning *),
         made_assignment as (insert into assignment (company_id, id, visit_id, colleague_id, starts_at, ends_at)
           select v.company_id, gen_random_uuid(), v.id, who.id, v.starts_at, v.ends_at from made_visit v, who returning id)
       select v.id as "visitId", place.label as site from made_visit v, place`,
      [me?.name, kind, at, sheet],
    )
    if (!one) throw new Error('a visit could not be made')
    made.push({ kind, ...one })
  }
  return made
}

/** What came of the visits, counted in the database. */
const landed = (ids: string[]) =>
  askDatabase<{ kind: string; state: string; outcome: string; closeOuts: number; starts: number; aside: number }>(
    `select j.kind, v.state, v.outcome,
       (select count(*)::int from audit_entry a where a.entity_id = v.id and a.operation = 'jobs.take-field-command: closed out') as "closeOuts",
       (select count(*)::int from audit_entry a where a.entity_id = v.id and a.operation = 'jobs.take-field-command: started') as starts,
       (select count(*)::int from set_aside s where s.visit_id = v.id) as aside
     from visit v join job j on j.id = v.job_id where v.id = any($1) order by j.kind`,
    [ids],
  )

test('without a server: a cold start, three visits of different kinds done and closed, the browser ended; with it again all is there once', async () => {
  test.setTimeout(400_000)
  if (!me) throw new Error('the demo has no technician')
  const visits = await bookAtNight()
  const server = await ownServer()
  const { switchOn, switchOff, close } = newTablet(server.baseURL)
  const lineOf = (page: Page, site: string, kind: RegExp) =>
    page.locator('main li a').filter({ hasText: site }).filter({ hasText: kind }).first()
  try {
    await server.start()
    let page = await switchOn()
    await signInByForm(page, me)
    await keepForLater(page, KINDS.length)
    await switchOff()
    await server.stop()

    // A cold start: nothing but what the browser kept.
    page = await switchOn()
    await page.goto('/today')
    await expect(page.getByText(/No connection\. This is from/)).toBeVisible()
    expect(await tooSmall(page)).toEqual([])
    for (const [at, { kind, site }] of visits.entries()) {
      await lineOf(page, site, new RegExp(kind, 'i')).click()
      await expect(page.getByRole('heading', { level: 1 })).toContainText(site)
      await startVisit(page, 'Start visit', /^(Next step|Close out)$/)
      expect(await tooSmall(page)).toEqual([])
      const heading = page.getByRole('heading', { level: 1 })
      const end = page.getByRole('heading', { name: 'How did the visit end?' })
      if (kind === 'delivery')
        for (let step = 0; step < 12 && !(await end.isVisible()); step++) {
          const title = await heading.textContent()
          await answerAll(page)
          await page.getByRole('button', { name: /^(Next step|Close out)$/ }).click()
          await expect(heading).not.toHaveText(title ?? '')
        }
      else await page.getByRole('button', { name: 'Stop and close out' }).click()
      await page.getByRole('radio', { name: kind === 'delivery' ? /^Done/ : /^No access/ }).check()
      if (kind !== 'delivery') await page.getByRole('textbox', { name: 'What you found' }).fill(`nobody at home, ${kind}`)
      await page.getByRole('button', { name: 'Finish visit' }).click()
      await expect(page.getByText('Saved here, waiting to send.')).toBeVisible()
      await page.getByRole('link', { name: 'Back to today’s work' }).click()
      await expect(page.getByText(`Waiting to send (${2 * (at + 1)})`)).toBeVisible()
    }
    await switchOff()
    page = await switchOn()
    await page.goto('/today')
    await expect(page.getByText('Waiting to send (6)')).toBeVisible()
    expect((await landed(visits.map((one) => one.visitId))).map((one) => one.state)).toEqual(['booked', 'booked', 'booked'])

    await server.start()
    // By itself: the longest wait between two tries is a minute.
    await expect(page.getByText(/Waiting to send/)).toHaveCount(0, { timeout: 80_000 })
    await expect(page.getByText(/No connection\. This is from/)).toHaveCount(0, { timeout: 40_000 })
    expect(await landed(visits.map((one) => one.visitId))).toEqual([
      { kind: 'delivery', state: 'closed', outcome: 'done', closeOuts: 1, starts: 1, aside: 0 },
      { kind: 'inspection', state: 'closed', outcome: 'no-access', closeOuts: 1, starts: 1, aside: 0 },
      { kind: 'repair', state: 'closed', outcome: 'no-access', closeOuts: 1, starts: 1, aside: 0 },
    ])
  } finally {
    await close()
    await server.stop()
  }
})
