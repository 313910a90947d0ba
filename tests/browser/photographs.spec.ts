import fs from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import exifr from 'exifr'
import { extractText, getDocumentProxy } from 'unpdf'
import { askDatabase } from '../support/ask-database.ts'
import { cameraPicture } from '../support/camera-picture.ts'
import { DEMO_PEOPLE, signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'

test.use({ viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' })

type Row = { id: string; kind: string; state: string; name: string | null }

/** What the database has of a visit's pictures, by the app's own login. */
const picturesOf = (visitId: string) =>
  askDatabase<Row>(
    `select p.id, p.kind, p.state, s.name from picture p left join signature s on s.company_id = p.company_id and s.picture_id = p.id
     where p.visit_id = $1 order by p.kind`,
    [visitId],
  )

/** A visit of weeks ago that no other journey looks at: nobody is on it, and its sheet is its own. */
async function makeVisit(): Promise<{ visitId: string; jobId: string }> {
  const me = DEMO_PEOPLE.find((one) => one.role === 'technician')
  const [made] = await askDatabase<{ visitId: string; jobId: string }>(
    `with who as (select company_id from colleague where name = $1 limit 1),
       place as (select b.id as bed_id, o.id as softener_id, o.site_id from bed b
         join tank t on t.company_id = b.company_id and t.id = b.tank_id join softener o on o.company_id = t.company_id and o.id = t.softener_id
         join site s on s.company_id = o.company_id and s.id = o.site_id join who on who.company_id = b.company_id
         where b.ended_latest is null and b.archived_at is null and o.archived_at is null and s.archived_at is null order by b.id offset 60 limit 1),
       sheet as (insert into crew_day (company_id, id, day, name, starts_at, ends_at)
         select company_id, gen_random_uuid(), current_date - 20, 'Photographs', now() - interval '20 days', now() - interval '476 hours' from who returning *),
       job_of as (insert into job (company_id, id, site_id, softener_id, bed_id, kind, state, minutes, crew_size, created_at)
         select who.company_id, gen_random_uuid(), site_id, softener_id, bed_id, 'repair', 'booked', 60, 1, now() - interval '25 days' from who, place returning *),
       made as (insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state)
         select j.company_id, gen_random_uuid(), j.id, s.id, s.starts_at, s.starts_at + interval '1 hour', 'booked' from job_of j, sheet s returning *)
     select id as "visitId", job_id as "jobId" from made`,
    [me?.name],
  )
  if (!made) throw new Error('the demo has no bed to visit')
  return made
}

/** Draws a line over a field as a finger does. */
async function draw(page: Page): Promise<void> {
  const pad = page.getByRole('img', { name: 'Sign in the white field' })
  // In the middle: the bar with the last button stands over what is below.
  await pad.evaluate((field) => field.scrollIntoView({ block: 'center' }))
  const box = await pad.boundingBox()
  if (!box) throw new Error('the field is not on the page')
  await page.mouse.move(box.x + 20, box.y + 90)
  await page.mouse.down()
  for (let step = 1; step <= 12; step++) await page.mouse.move(box.x + 20 + step * 22, box.y + 90 + (step % 2 ? -40 : 40))
  await page.mouse.up()
}

test('photographs taken and a signature drawn without signal come to the office once, without their place, and into the report', async ({
  page,
  context,
}) => {
  test.setTimeout(240_000)
  await signIn(page, 'technician')
  const { visitId, jobId } = await makeVisit()
  await page.goto(`/visits/${visitId}`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Repair at')
  await startVisit(page, /^(Start|Resume) visit$/)
  await page.getByRole('button', { name: 'Stop and close out' }).click()
  await expect(page.getByRole('heading', { name: 'How did the visit end?' })).toBeVisible()

  await context.setOffline(true)
  const taken = { name: 'camera.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(await cameraPicture()) }
  expect(await exifr.gps(taken.buffer)).toBeDefined()
  await page.getByLabel('Photo: as found').setInputFiles(taken)
  await expect(page.getByRole('img', { name: 'As found' })).toBeVisible()
  await page.getByLabel('Photo: as left').setInputFiles({ ...taken, buffer: Buffer.from('no picture at all') })
  await expect(page.getByText('That picture can’t be read here.')).toBeVisible()
  await page.getByLabel('Signs here').check()
  await page.getByRole('button', { name: 'Save signature' }).click()
  await expect(page.getByText('Type the name first.')).toBeVisible()
  await page.getByLabel('Name of who signs').fill('Hester Vance')
  await page.getByRole('button', { name: 'Save signature' }).click()
  await expect(page.getByText('Nothing is drawn yet.')).toBeVisible()
  await draw(page)
  await page.getByRole('button', { name: 'Save signature' }).click()
  await expect(page.getByRole('img', { name: 'Signed by Hester Vance' })).toBeVisible()
  await expect(page.getByText('2 photos and signatures wait to be sent.')).toBeVisible()
  for (const button of await page.locator('label:has(input[type=file])').all())
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(48)
  expect(await picturesOf(visitId)).toEqual([])

  await context.setOffline(false)
  await expect(page.getByText('wait to be sent.')).toBeHidden({ timeout: 60_000 })
  await expect(async () => expect((await picturesOf(visitId)).map((one) => one.state)).toEqual(['stored', 'stored'])).toPass({
    timeout: 60_000,
  })
  const rows = await picturesOf(visitId)
  expect(rows.map(({ kind, name }) => [kind, name])).toEqual([
    ['as-found', null],
    ['signature', 'Hester Vance'],
  ])
  const kept = await page.request.get(`/api/pictures/${rows[0]?.id}`)
  expect(kept.headers()['content-type']).toBe('image/jpeg')
  expect(await exifr.gps(await kept.body())).toBeUndefined()

  await page.getByRole('radio', { name: /^No access/ }).check()
  await page.getByRole('textbox', { name: 'What you found' }).fill('nobody at home')
  await page.getByRole('button', { name: 'Finish visit' }).click()
  await expect(page.getByText(/Closed out/)).toBeVisible({ timeout: 30_000 })

  await page.goto(`/jobs/${jobId}`)
  await expect(page.getByRole('img', { name: /^As found/ })).toBeVisible({ timeout: 30_000 })
  await expect(page.getByRole('img', { name: 'Signature of Hester Vance' })).toBeVisible()
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('link', { name: 'Service report (PDF)' }).click(),
  ])
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(await fs.readFile(await download.path()))), { mergePages: true })
  expect(text.replace(/\s+/g, ' ')).toContain('Signed by Hester Vance')
})
