import { expect, type Locator, type Page, test } from '@playwright/test'
import { invite, join, press, setUp } from '../support/own-company.ts'
import { uglyList } from '../support/ugly-list.ts'

const COMPANY = 'Orchard Gate Water'
const DAY_MS = 86_400_000
const isoDay = (at: number) => new Date(at).toISOString().slice(0, 10)
const figure = (text: string | undefined) => Number((text ?? '').replace(/[^\d.]/g, ''))
const whole = (count: number) => count.toLocaleString('en-US')

/** A day on which people work, two days ahead or more. */
function workingDay(): string {
  const days = [2, 3, 4].map((ahead) => Date.now() + ahead * DAY_MS)
  return isoDay(days.find((at) => ![0, 6].includes(new Date(at).getUTCDay())) ?? 0)
}

const HOURS = 'Hours of rebeds needed, by month, as a table'
/** Where its booked hours stand. */
const BOOKED = 5

/** The rows of a table as they are shown. */
const rowsOf = (table: Locator) =>
  table
    .locator('tbody tr')
    .evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent?.trim() ?? '')))

/** Types into a field and goes on with Enter. */
async function answer(page: Page, field: Locator, text: string) {
  await field.focus()
  await field.fill(text)
  await page.keyboard.press('Enter')
}

test('a company with nothing but its own list: set up, two people in, the list checked and written, what comes due by hand count, a call, a rebed booked, the company closed and kept', async ({
  page,
  browser,
}) => {
  test.setTimeout(900_000)
  const list = uglyList(7, new Date().getFullYear())
  await setUp(page, COMPANY, { name: 'Maeve Orchard', email: 'maeve@orchardgate.example' })
  await page.goto('/crews')
  const [toDell, toTomas] = [await invite(page, 'Dell Brook', 'dispatcher'), await invite(page, 'Tomas Lund', 'technician')]
  const dell = await join(browser, COMPANY, toDell, 'dell@orchardgate.example')
  const tomas = await join(browser, COMPANY, toTomas, 'tomas@orchardgate.example')
  await expect(tomas).toHaveURL(/today/)

  // Brought in by its owner, by keyboard; what will happen is what the list holds, counted while it was made.
  await page.goto('/imports')
  const file = { name: 'customer book.csv', mimeType: 'text/csv', buffer: Buffer.from(list.bytes) }
  await page.getByLabel('Spreadsheet to import').setInputFiles(file)
  await expect(page.getByRole('heading', { name: 'What each column holds' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(`${whole(list.lines)} rows.`)).toBeVisible()
  await expect(page.getByLabel('What Rte holds')).toHaveValue('')
  for (const [heading, field] of [
    ['Put in', 'installed'],
    ['Size', 'tank'],
    ['Hard', 'hardness'],
    ['Remarks', 'notes'],
    ['Last visit', 'lastSeen'],
    ['Cell', 'otherPhone'],
  ])
    await expect(page.getByLabel(`What ${heading} holds`)).toHaveValue(field ?? '')
  await press(page, 'Check the rows')
  const question = page.getByRole('heading', { name: 'When was this list last right, and were these softeners working then?' })
  await expect(question).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(`Nothing says when ${whole(list.unseen)} beds last worked.`)).toBeVisible()
  await answer(page, page.getByLabel('The list was right on'), isoDay(Date.now() - 30 * DAY_MS))
  await expect(page.getByText('Softeners without a visit of their own count as seen working on')).toBeVisible({ timeout: 60_000 })
  await expect(
    page.getByText(`${whole(list.customers)} customers, ${whole(list.sites)} sites, ${whole(list.softeners)} softeners`),
  ).toBeVisible()
  await expect(
    page.getByText(`${list.decide} rows to decide about, ${list.leftEmpty} rows with a cell left empty, ${list.leftOut} rows left out.`),
  ).toBeVisible()
  await press(page, /^Import [\d,]+ rows$/)
  await expect(page.getByRole('heading', { name: 'Imported' })).toBeVisible({ timeout: 120_000 })

  // What comes due agrees with itself, and with the list.
  await page.goto('/coming-due')
  await expect(page.getByText(`${whole(list.beds)} beds in service.`)).toBeVisible({ timeout: 400_000 })
  const lead = (await page.getByText(/beds will fail, most likely/).textContent()) ?? ''
  const work = figure(/([\d,]+) rebeds of work/.exec(lead)?.[1])
  const expected = figure(/([\d,]+) beds will fail/.exec(lead)?.[1])
  const failedAlready = figure(/; ([\d,]+) have failed unseen/.exec(lead)?.[1])
  expect(work).toBe(expected + failedAlready)
  await press(page, /Show as table.*Hours of rebeds needed/)
  const months = await rowsOf(page.getByRole('table', { name: HOURS }))
  expect(months).toHaveLength(12)
  const sum = (rows: string[][], column: number) => rows.reduce((total, row) => total + figure(row[column]), 0)
  // Twelve figures in whole rebeds, and one sum.
  expect(Math.abs(sum(months, 1) - work)).toBeLessThanOrEqual(12 * 0.5 + 1)
  await page.getByLabel('Group by').selectOption({ label: 'town' })
  await press(page, /Show as table.*by town/)
  const towns = await rowsOf(page.getByRole('table', { name: 'Beds expected to fail in 12 months, by town, as a table' }))
  // However each line spells it.
  expect(Object.fromEntries(towns.map(([name, beds]) => [name?.toLowerCase(), figure(beds)]))).toEqual(
    Object.fromEntries(Object.entries(list.bedsOfTown).map(([name, beds]) => [name.toLowerCase(), beds])),
  )
  expect(Math.abs(sum(towns, 2) - failedAlready)).toBeLessThanOrEqual(towns.length * 0.05 + 0.5)
  expect(Math.abs(sum(towns, 3) - expected)).toBeLessThanOrEqual(towns.length * 0.05 + 0.5)
  const supplies = await page.getByLabel('Supply', { exact: true }).getByRole('option').allTextContents()
  for (const [name, beds] of Object.entries(list.bedsOfSupply))
    expect(supplies.map((one) => one.toLowerCase())).toContain(`${name.toLowerCase()} (${beds})`)
  await page.getByLabel('Age', { exact: true }).selectOption('20')
  await expect(page.getByText(`${list.old} shown`)).toBeVisible()

  // Somebody to send and something to drive; the technician stands on day sheets since they joined.
  await page.goto('/crews')
  await expect(page.getByRole('button', { name: 'Edit Tomas Lund' })).toBeVisible()
  await press(page, 'Add to day sheets')
  await answer(page, page.getByRole('dialog').getByLabel('Name', { exact: true }), 'Jory Pell')
  await expect(page.getByRole('button', { name: 'Edit Jory Pell' })).toBeVisible()
  await press(page, 'Add a vehicle')
  const vehicle = page.getByRole('dialog')
  await vehicle.getByLabel('Name', { exact: true }).fill('Blue truck')
  await vehicle.getByRole('textbox', { name: 'Room for material' }).fill('20')
  await answer(page, vehicle.getByRole('textbox', { name: 'Payload for material' }), '1200')
  await expect(page.getByRole('heading', { name: 'Blue truck' })).toBeVisible()

  // The telephone rings: found by the second number of the list, hard water since spring, a rebed. By keyboard but for the choices.
  await dell.goto('/jobs')
  await expect(dell.getByText(/^(Reading|Loading)/)).toHaveCount(0)
  await dell.keyboard.press('c')
  const call = dell.getByRole('dialog', { name: 'Record a call' })
  await expect(call).toBeVisible()
  await dell.keyboard.type(list.caller.second)
  await expect(call.getByRole('option').first()).toContainText(list.caller.street)
  await dell.keyboard.press('Enter')
  await call.getByRole('radio', { name: 'Hard', exact: true }).check()
  await call.getByLabel('Hard since about').fill('spring')
  await call.getByRole('radio', { name: 'Rebed', exact: true }).check()
  await press(dell, 'Keep call')
  await expect(dell.getByRole('heading', { name: `Rebed at ${list.caller.street}` })).toBeVisible()
  const jobPage = dell.url()

  const day = workingDay()
  await dell.goto(`/day-sheets?day=${day}`)
  await press(dell, 'Open a sheet')
  const sheet = dell.getByRole('dialog', { name: 'Open a day sheet' })
  await sheet.getByRole('checkbox', { name: 'Tomas Lund' }).check()
  await sheet.getByRole('checkbox', { name: 'Jory Pell' }).check()
  await sheet.getByLabel('Vehicle').selectOption({ label: 'Blue truck' })
  await press(dell, 'Open the sheet')
  await expect(dell.getByRole('region', { name: 'Day sheet of Tomas & Jory' })).toBeVisible()
  // The owner looks on: nobody loads their page again.
  await page.goto('/coming-due')
  await press(page, /Show as table.*Hours of rebeds needed/)
  const shown = page.getByRole('table', { name: HOURS })
  await expect(shown).toBeVisible()
  expect(sum(await rowsOf(shown), BOOKED)).toBe(0)
  await dell.goto(jobPage)
  const book = dell.getByRole('button', { name: /^Book .*, Tomas & Jory$/ }).first()
  await book.focus()
  await dell.keyboard.press('Enter')
  await expect(dell.getByText(`Rebed · ${list.caller.street} is booked.`)).toBeVisible()
  await expect.poll(async () => sum(await rowsOf(shown), BOOKED)).toBeGreaterThan(0)

  // The owner closes the company: whoever else has it open is out at once, and in again when it is taken back.
  await page.goto('/firm')
  await press(page, 'Close the company')
  const asked = page.getByRole('dialog', { name: `Close ${COMPANY}?` })
  await expect(asked.getByRole('button', { name: 'Close the company' })).toBeDisabled()
  await asked.getByLabel('Type the company’s name').fill(COMPANY)
  await asked.getByRole('button', { name: 'Close the company' }).click()
  await expect(page.getByText('Your company is being closed.')).toBeVisible()
  await expect(dell).toHaveURL(/sign-in/, { timeout: 10_000 })
  await press(page, 'Keep the company')
  await expect(page.getByText('Your company is being closed.')).toHaveCount(0)
  await dell.goto(jobPage)
  await expect(dell.getByRole('heading', { name: `Rebed at ${list.caller.street}` })).toBeVisible()
  await dell.context().close()
  await tomas.context().close()
})
