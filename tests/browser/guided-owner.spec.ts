import { type Browser, expect, type Page, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { askDatabase } from '../support/ask-database.ts'
import { cameraPicture } from '../support/camera-picture.ts'
import { signIn } from '../support/sign-in.ts'

test.use({ serviceWorkers: 'block' })
const PHONE = { width: 390, height: 844 }

type Place = { siteId: string; bedId: string; customer: string }

/** Houses with one softener of one 10-inch tank, whose bed has no job. */
const houses = () =>
  askDatabase<Place>(
    `select s.id as "siteId", b.id as "bedId", c.name as customer from site s
       join tenure t on t.site_id = s.id and t.to_day is null join customer c on c.id = t.customer_id
       join softener f on f.site_id = s.id and f.archived_at is null join tank k on k.softener_id = f.id join bed b on b.tank_id = k.id
     where s.archived_at is null and b.ended_latest is null and b.archived_at is null and k.diameter_in = 10 and k.height_in in (44, 54) and b.volume_ft3 is not null
       and not exists (select 1 from job j where j.site_id = s.id)
       and (select count(*) from tank o join softener g on g.id = o.softener_id where g.site_id = s.id) = 1
     order by s.id limit 2`,
    [],
  )

/** Keeps a go for a bed, with what an owner says in a house where it can be done. */
async function keepGo(page: Page, bedId: string) {
  await page.goto(`/beds/${bedId}/choice`)
  const pick = (label: RegExp, answer: string) => page.getByLabel(label).selectOption({ label: answer })
  await pick(/How is the softener reached/, 'On the level')
  for (const label of [/second strong person/, /Is there a bypass/, /proven to hold/, /local law let/]) await pick(label, 'Yes')
  for (const label of [/Lead, asbestos/, /Metal pipe/]) await pick(label, 'No')
  await page.getByRole('textbox', { name: 'Water pressure' }).fill('55')
  await page.getByLabel(/What the law says/).fill('Township: allowed in one’s own house')
  await page.getByRole('button', { name: 'Keep this answer' }).click()
  await expect(page.getByRole('list', { name: 'Kept answers' })).toContainText('An owner can do it with a helper')
}

/** A link for the house, opened on a telephone. */
async function openLink(page: Page, browser: Browser, siteId: string) {
  await page.goto(`/sites/${siteId}`)
  await page.getByRole('button', { name: 'Make a measuring link' }).click()
  const link = await page.getByLabel('The owner’s link').inputValue()
  const phone = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' })
  const owner = await phone.newPage()
  await owner.goto(new URL(link).pathname)
  return owner
}

async function sendPhoto(owner: Page, label: string | RegExp) {
  const form = owner.locator('form', { has: owner.getByLabel(label) })
  const buffer = Buffer.from(await cameraPicture({ width: 320, height: 240 }))
  await form.getByLabel(label).setInputFiles({ name: 'IMG_0001.JPG', mimeType: 'image/jpeg', buffer })
  await form.getByRole('button', { name: 'Send photo' }).click()
}

/** Ticks what a step asks, and answers its choices with what lets the work go on. */
async function answer(owner: Page) {
  for (const box of await owner.getByRole('checkbox').all()) await box.check()
  for (const group of await owner
    .getByRole('radiogroup')
    .or(owner.locator('fieldset', { has: owner.getByRole('radio') }))
    .all())
    await group.getByRole('radio').first().check()
}

/** Goes on step by step until one has this heading. */
async function walkTo(owner: Page, heading: RegExp) {
  const head = owner.getByRole('heading', { level: 1 })
  for (let step = 0; step < 40; step++) {
    const before = (await head.textContent()) ?? ''
    if (heading.test(before)) return
    await answer(owner)
    await owner.getByRole('button', { name: 'Done, next step' }).click()
    await expect(head).not.toHaveText(before)
  }
}

test('an owner rebeds by the link while the office looks at both hold points; the bed is renewed', async ({ page, browser }) => {
  test.setTimeout(240_000)
  await signIn(page, 'dispatcher')
  const [place] = await houses()
  if (!place) throw new Error('the demo has no such house')
  await keepGo(page, place.bedId)
  await page.getByRole('button', { name: 'Kit to collect' }).click()
  await expect(page.getByRole('link', { name: 'Open the delivery' })).toBeVisible()

  const owner = await openLink(page, browser, place.siteId)
  const head = owner.getByRole('heading', { level: 1 })
  await owner.getByRole('link', { name: 'Send us photos' }).click()
  await sendPhoto(owner, /The label on the tank/)
  await expect(owner.getByText('We have the label.')).toBeVisible()
  const photos = page.getByRole('list', { name: /^Photos from the owner/ })
  await expect(photos.getByRole('img', { name: 'Label, from the owner' })).toBeVisible()

  await page.getByRole('button', { name: 'Send the steps' }).click()
  await expect(page.getByRole('button', { name: 'Send the steps' })).toHaveCount(0)
  await owner.goto(new URL(owner.url()).pathname)
  await expect(owner.getByText(/^Step 1 of \d+$/)).toBeVisible()
  await expect(owner.getByText(place.customer)).toHaveCount(0)
  await expectAccessible(owner, 'an owner’s step')
  await owner.setViewportSize(PHONE)

  // The cap: nothing goes on until the office has looked; once it says what to fix.
  await walkTo(owner, /Take the cap out/)
  await expect(owner.getByRole('button', { name: 'Done, next step' })).toHaveCount(0)
  await expectAccessible(owner, 'an owner’s hold point')
  await owner.setViewportSize(PHONE)
  await answer(owner)
  await sendPhoto(owner, 'Photo')
  await expect(owner.getByText(/We have your photo\. We’re looking/)).toBeVisible()
  await expect(photos.getByRole('img', { name: 'Cap taken out, from the owner' })).toBeVisible()
  await page.getByLabel('Or what to fix first').fill('Show the open tube too.')
  await page.getByRole('button', { name: 'Send what to fix' }).click()
  // The owner's page goes on by itself.
  await expect(owner.getByText(/Please fix this first: Show the open tube too\./)).toBeVisible({ timeout: 20_000 })
  await answer(owner)
  await sendPhoto(owner, 'Photo')
  await expect(owner.getByText(/We’re looking/)).toBeVisible()
  await page.getByRole('button', { name: 'Go on', exact: true }).click()
  await expect(head).toHaveText(/seat the valve/, { timeout: 20_000 })

  // The bypass, before water is opened.
  await walkTo(owner, /Reconnect the lines/)
  await answer(owner)
  await sendPhoto(owner, 'Photo')
  await expect(photos.getByRole('img', { name: 'Bypass, from the owner' })).toBeVisible()
  await page.getByRole('button', { name: 'Go on', exact: true }).click()
  await expect(head).toHaveText(/Start slowly/, { timeout: 20_000 })

  await walkTo(owner, /How is the water/)
  await owner.getByRole('radio', { name: 'Soft', exact: true }).check()
  await owner.getByRole('button', { name: 'Tell us' }).click()
  await expect(head).toHaveText(/Your new resin is on record/)
  await expect(page.getByText('done, water soft').first()).toBeVisible()
  const beds = await askDatabase<{ from: string }>(
    `select n.fact_sources->>'began' as from from bed o join bed n on n.tank_id = o.tank_id and n.ended_latest is null where o.id = $1 and o.ended_latest is not null`,
    [place.bedId],
  )
  expect(beds[0]?.from).toMatch(/^said by link /)
  await owner.context().close()
})

test('an owner stops with the tank open and somebody comes: a job with where they stopped, and a call', async ({ page, browser }) => {
  test.setTimeout(240_000)
  await signIn(page, 'dispatcher')
  const place = (await houses()).at(-1)
  if (!place) throw new Error('the demo has no such house')
  await keepGo(page, place.bedId)
  const owner = await openLink(page, browser, place.siteId)
  await page.getByRole('button', { name: 'Send the steps' }).click()
  await expect(page.getByRole('button', { name: 'Send the steps' })).toHaveCount(0)
  await owner.goto(`${new URL(owner.url()).pathname}?l=es`)
  await expect(owner.getByText(/^Paso 1 de \d+$/)).toBeVisible()
  await owner.goto(new URL(owner.url()).pathname)
  await walkTo(owner, /Take the valve off/)
  await owner.getByText('I’d rather have someone come').click()
  await owner.getByRole('button', { name: 'Please send someone' }).click()
  await expect(owner.getByRole('heading', { level: 1 })).toHaveText('Stop here. We’ll come.')
  await expect(owner.getByText(/Leave the softener in bypass and in pieces/)).toBeVisible()
  await expect(owner.getByText(/water heater is still off/)).toBeVisible()
  await expect(owner.getByRole('button')).toHaveCount(0)
  await expectAccessible(owner, 'an owner’s stop page')

  await page.getByRole('link', { name: 'The visit', exact: true }).click()
  await expect(page.getByText(/Stopped at: Take the valve off/).first()).toBeVisible()
  await page.goto('/calls')
  await expect(page.getByText(/By the owner’s link: they would rather have someone come/).first()).toBeVisible()
  await owner.context().close()
})
