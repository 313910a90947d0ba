import { account } from '@almanac/words/es/account'
import { asks } from '@almanac/words/es/asks'
import { card } from '@almanac/words/es/card'
import { closeOut } from '@almanac/words/es/close-out'
import { common } from '@almanac/words/es/common'
import { jobKind } from '@almanac/words/es/job-kind'
import { jobState } from '@almanac/words/es/job-state'
import { ownAccount } from '@almanac/words/es/own-account'
import { steps } from '@almanac/words/es/steps'
import { today } from '@almanac/words/es/today'
import { visit } from '@almanac/words/es/visit'
import { expect, type Page, test } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import { askDatabase } from '../support/ask-database.ts'
import { englishLeft } from '../support/english-left.ts'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { answerAll } from '../support/walk-visit.ts'

test.use({ viewport: { width: 1024, height: 768 } })

/** By its place in the menu, since its name depends on the language that is read at that moment. */
async function choose(page: Page, language: string): Promise<void> {
  await page.goto('/today')
  await page.getByRole('button', { name: new RegExp(`^(Menu|${common.menu})$`) }).click()
  const loaded = page.waitForEvent('load')
  await page.getByLabel(new RegExp(`^(Language|${account.language})$`)).selectOption(language)
  await loaded
}

/** What stands on the page and what is read to those who do not see it; what people wrote themselves is left out by the test. */
const readPage = (page: Page) =>
  page.evaluate(() => {
    const names = [...document.querySelectorAll('[aria-label],[placeholder],[title],svg desc,svg title')].map((one) =>
      [
        one.getAttribute('aria-label'),
        one.getAttribute('placeholder'),
        one.getAttribute('title'),
        one.tagName === 'desc' || one.tagName === 'title' ? one.textContent : '',
      ].join(' '),
    )
    // biome-ignore lint/performance/useDomNodeTextContent: what is seen counts, not what is hidden
    return [document.body.innerText, ...names].join(' · ')
  })

test('a technician who reads Spanish meets no English from the day through every step of a rebed to its close-out, nor on its plan', async ({
  page,
}) => {
  test.setTimeout(500_000)
  await signIn(page, 'technician')
  await choose(page, 'es')
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  // What was written down for a job stays in the words of whoever wrote it.
  const noted = await askDatabase<{ notes: string }>('select distinct notes from job where notes is not null', [])
  const own = noted.map(({ notes }) => notes)
  const spoken = async (where: string) => expect(englishLeft(await readPage(page), own), where).toEqual([])
  await expect(page.getByText(today.title, { exact: true })).toBeVisible()
  await spoken('today')
  await page.getByRole('button', { name: common.menu }).click()
  await expect(page.getByRole('navigation')).toBeVisible()
  await spoken('menu')

  await page.goto('/today')
  // One that no other journey has closed: those stand below the open ones.
  await page.locator('main li a').filter({ hasText: jobKind.rebed }).filter({ hasNotText: jobState.closed }).last().click()
  const start = page.getByRole('button', { name: new RegExp(`^(${visit.start}|${visit.resume})$`) })
  await expect(start).toBeVisible()
  await spoken('brief')
  const whys = page.locator('main button[aria-haspopup=dialog]')
  for (let i = 0; i < (await whys.count()); i++) {
    await whys.nth(i).click()
    await expect(page.getByRole('dialog')).toBeVisible()
    await spoken(`why of kit line ${i + 1}`)
    await page.keyboard.press('Escape')
  }
  const address = await page.getByRole('link', { name: visit.plan }).getAttribute('href')
  const answer = await page.request.get(address ?? '')
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(await answer.body())), { mergePages: true })
  expect(text).toContain(steps['seat-valve'])
  expect(englishLeft(text, own), 'the plan on paper').toEqual([])

  await startVisit(page, new RegExp(`^(${visit.start}|${visit.resume})$`), visit.nextStep)
  const head = page.getByRole('heading', { level: 1 })
  await expect(head).toHaveText(steps['stop-and-refer'])
  await expect(page.getByLabel(asks['stop-case/none'])).toBeVisible()
  const next = page.getByRole('button', { name: new RegExp(`^(${visit.nextStep}|${visit.toCloseOut})$`) })
  const outcomes = page.locator('main input[name=outcome]')
  let seen = 0
  for (; seen < 40 && (await outcomes.count()) === 0; seen++) {
    const before = (await head.textContent()) ?? ''
    await spoken(before)
    await next.click()
    for (let tries = 0; tries < 4 && (await head.textContent()) === before; tries++) {
      await spoken(`${before}, pressed without an answer`)
      await answerAll(page, tries)
      await next.click()
    }
    await expect(head).not.toHaveText(before)
  }
  expect(seen).toBeGreaterThan(20)
  await expect(head).toHaveText(closeOut.title)
  // The stores' own names of what they keep, in the company that has the visit.
  const visitId = new URL(page.url()).pathname.split('/').at(-1)
  const stock = await askDatabase<{ name: string }>('select name from stock_item where exists (select 1 from visit where id = $1)', [
    visitId,
  ])
  own.push(...stock.map(({ name }) => name))
  for (const outcome of await outcomes.all()) {
    await outcome.check()
    await page.getByRole('button', { name: closeOut.finish }).click()
    await expect(page.getByText(closeOut.missing)).toBeVisible()
    await spoken(`close-out ${await outcome.getAttribute('value')}`)
  }
  await choose(page, '')
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
})

test('the settings card and one’s own account are in Spanish too', async ({ page }) => {
  await signIn(page, 'technician')
  await choose(page, 'es')
  const [softener] = await askDatabase<{ id: string; label: string; site: string; town: string; supply: string | null }>(
    `select o.id, o.label, s.label as site, s.town, w.name as supply from softener o join site s on s.id = o.site_id
       join tank t on t.softener_id = o.id join company c on c.id = o.company_id left join water_supply w on w.id = s.water_supply_id
     where c.name = 'Larkmoor Soft Water' and t.diameter_in is not null and o.archived_at is null limit 1`,
    [],
  )
  if (!softener) throw new Error('no softener whose size is known')
  await page.goto(`/softeners/${softener.id}/settings`)
  await page.getByLabel(card.rawHardness).fill('18')
  await expect(page.getByRole('heading', { name: card.enterAtValve })).toBeVisible()
  const names = [softener.label, softener.site, softener.town, softener.supply ?? '']
  // Titles of books and standards stay as they are printed.
  const books = [
    'Water and Wastewater Engineering',
    'Residential End Uses of Water',
    'National Standard Plumbing Code',
    'Health and Safety Code',
  ]
  const said = async (where: string) => expect(englishLeft(await readPage(page), [...names, ...books]), where).toEqual([])
  await said('the settings card')
  for (const why of (await page.getByRole('button', { name: new RegExp(`\\(${common.why.replace('?', '\\?')}\\)$`) }).all()).slice(0, 30)) {
    await why.click()
    await expect(page.getByRole('dialog')).toBeVisible()
    await said(`why: ${await page.getByRole('dialog').getByRole('heading').first().textContent()}`)
    await page.keyboard.press('Escape')
  }
  await page.goto('/sessions')
  await expect(page.getByRole('heading', { name: ownAccount.devices })).toBeVisible()
  await expect(page).toHaveTitle(new RegExp(ownAccount.title))
  await said('the account')
  await choose(page, '')
})

test('each page that a technician comes to from Today and the menu is in Spanish', async ({ page }) => {
  test.setTimeout(300_000)
  await signIn(page, 'technician')
  await choose(page, 'es')
  const LARKMOOR = `company_id = (select id from company where name = 'Larkmoor Soft Water')`
  // What people wrote themselves: names, places, notes, the stores' own items.
  const written = await askDatabase<{ text: string }>(
    `select label as text from site where ${LARKMOOR} union select town from site where ${LARKMOOR} union select street from site where ${LARKMOOR}
     union select access_notes from site where ${LARKMOOR} union select notes from site where ${LARKMOOR} union select region from site where ${LARKMOOR}
     union select name from customer where ${LARKMOOR} union select notes from customer where ${LARKMOOR} union select name from contact where ${LARKMOOR}
     union select label from softener where ${LARKMOOR} union select location from softener where ${LARKMOOR} union select notes from softener where ${LARKMOOR}
     union select name from stock_item where ${LARKMOOR} union select name from water_supply where ${LARKMOOR} union select source from supply_period where ${LARKMOOR}
     union select notes from job where ${LARKMOOR} union select state_reason from job where ${LARKMOOR} union select notes from visit where ${LARKMOOR}
     union select notes from inspection where ${LARKMOOR} union select name from crew_day where ${LARKMOOR} union select name from colleague where ${LARKMOOR}
     union select began_as_written from bed where ${LARKMOOR} union select installed_as_written from softener where ${LARKMOOR}
     union select size_as_written from tank where ${LARKMOOR}`,
    [],
  )
  const own = written.map(({ text }) => text ?? '')
  const links = async () =>
    page.evaluate(() => [...document.querySelectorAll<HTMLAnchorElement>('a[href^="/"]')].map((one) => one.getAttribute('href') ?? ''))
  /** One page of each kind: what follows the first word is a record of its own. */
  const kindOf = (href: string) => href.replace(/[?#].*$/, '').replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, 'ID')
  const waiting = ['/today']
  const seen = new Set<string>()
  while (waiting.length > 0) {
    const href = waiting.shift() ?? ''
    const kind = kindOf(href)
    if (seen.has(kind) || href.startsWith('/api/')) continue
    seen.add(kind)
    await page.goto(href)
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
    await page.waitForLoadState('networkidle')
    expect(englishLeft(await readPage(page), own), kind).toEqual([])
    waiting.push(...(await links()))
  }
  // What Today and the menu's row lead to, so that a page that is missing here is noticed too; what stands behind "More" is rendered by the unit tests.
  for (const kind of [
    '/today',
    '/visits/ID',
    '/sites',
    '/sites/ID',
    '/softeners/ID/settings',
    '/beds/ID',
    '/stores',
    '/whats-wrong',
    '/which-tank',
  ])
    expect([...seen], kind).toContain(kind)
  await choose(page, '')
})

test('one reads Spanish, another English', async ({ page, browser }) => {
  await signIn(page, 'technician')
  await choose(page, 'es')
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  const other = await browser.newPage()
  await signIn(other, 'owner')
  await expect(other.locator('html')).toHaveAttribute('lang', 'en')
  await other.close()
  await choose(page, '')
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
})

test.describe('before signing in', () => {
  test.use({ locale: 'es-MX' })
  test('the way in speaks the browser’s language', async ({ page }) => {
    await page.goto('/sign-in')
    await expect(page.getByRole('button', { name: 'Iniciar sesión' })).toBeVisible()
    expect(englishLeft(await readPage(page))).toEqual([])
    await page.getByLabel('Correo electrónico').fill('nobody@larkmoor.example.com')
    await page.getByLabel('Contraseña').fill('not the password')
    await page.getByRole('button', { name: 'Iniciar sesión' }).click()
    await expect(page.getByRole('alert').filter({ hasText: 'Correo o contraseña incorrectos.' })).toBeVisible()
  })
})
