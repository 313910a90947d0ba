import { execFile } from 'node:child_process'
import path from 'node:path'
import { promisify } from 'node:util'
import { type Browser, expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { mailServer } from '../support/mail-server.ts'
import { mailbox } from '../support/mailbox.ts'
import { reportOfDelivery } from '../support/report-of-delivery.ts'
import { signIn } from '../support/sign-in.ts'

const ASIDE = path.resolve(import.meta.dirname, '../support/asides/work-once.ts')
/** Mid-morning at the demo's customers, on the day of the test. */
const instant = `${new Date().toISOString().slice(0, 10)}T17:00:00Z`

/** Lets the worker do one task, with a mail server or a mailbox of this test's own. */
const work = (queue: string, companyId: string, env: Record<string, string>) =>
  promisify(execFile)(process.execPath, [ASIDE, queue, companyId, instant], {
    env: { ...process.env, NODE_OPTIONS: '', LOG_LEVEL: 'error', ...env },
  })

type Mail = { to: string; site: string; spanish: boolean; link: string; named: string; text: string }

/** A customer's phone, without scripts, at the link in their mail. It shows their own place and nobody else's. */
async function phoneAt(browser: Browser, mail: Mail, others: readonly Mail[]) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false })
  const phone = await context.newPage()
  await phone.goto(`${mail.link}?l=en`)
  const shown = (await phone.locator('body').textContent()) ?? ''
  expect(shown).toContain(mail.site)
  for (const other of others) if (!mail.site.includes(other.site)) expect(shown).not.toContain(other.site)
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
  return { phone, close: () => context.close() }
}

async function writeOwnText(page: Page) {
  await page.goto('/reminders/texts')
  const text = page.getByLabel('Text', { exact: true })
  await text.fill('Hello {{ nmae }}, answer at {{ answer_link }}')
  await expect(page.getByText('There’s no “nmae” to fill in (line 1).', { exact: false })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Save text' })).toBeDisabled()
  await text.fill(
    'Hello {{ name }}\n\n{{ why }} Your tank: {{ tank_size }}.\n\nAnswer at {{ answer_link }}\n\n{{ company }}, <b>{{ phone }}</b>',
  )
  await expect(page.getByRole('region', { name: 'Preview' }).getByText('Hello Maximiliana Featherstonehaugh-Cholmondeley')).toBeVisible()
  await page.getByLabel('Preview for a customer').fill('orchard')
  await page.getByRole('region', { name: 'Preview' }).getByRole('listitem').first().getByRole('button').press('Enter')
  await expect(page.getByRole('region', { name: 'Preview' }).getByText(/^For .*Orchard/)).toBeVisible()
  await page.getByRole('button', { name: 'Save text' }).click()
  await expect(page.getByText('Your own text.')).toBeVisible()
}

test('a morning of reminders: approved, received, answered, booked, come back, unsubscribed', async ({ page, browser }) => {
  test.setTimeout(240_000)
  const smtp = await mailServer()
  const mailing = { SMTP_URL: smtp.url, MAIL_FROM: 'almanac@firm.example' }

  await signIn(page, 'owner')
  await writeOwnText(page)
  await page.goto('/reminders')
  const rows = page.getByRole('row').filter({ hasText: /email: / })
  // The worker raises them once it has forecast the demo's beds.
  await expect(async () => {
    await page.reload()
    await expect(rows.first()).toBeVisible({ timeout: 3_000 })
  }).toPass({ timeout: 60_000 })
  const count = Math.min(await rows.count(), 12)
  expect(count).toBeGreaterThan(5)
  for (let i = 0; i < count; i++) await rows.nth(i).getByRole('checkbox').check()
  await page.getByRole('button', { name: 'Approve', exact: true }).click()
  await expect(page.getByText(`${count} done.`)).toBeVisible()

  // What is approved keeps its words; from now on the standard ones hold again.
  await page.goto('/reminders/texts')
  await page.getByRole('button', { name: 'Use standard text' }).click()
  await expect(page.getByText('The standard text.', { exact: false })).toBeVisible()

  const [company] = await askDatabase<{ id: string }>(
    `select company_id as id from message where state = 'approved' and channel = 'email'`,
    [],
  )
  const companyId = company?.id ?? ''
  await work('send-messages', companyId, mailing)
  await work('send-messages', companyId, mailing)
  expect(smtp.taken.length).toBeGreaterThanOrEqual(count)
  const sent = await askDatabase<{ id: string; address: string; label: string; language: string | null }>(
    `select m.id, m.address, s.label, c.language from message m join reminder r on r.company_id = m.company_id and r.id = m.reminder_id
     join site s on s.company_id = m.company_id and s.id = r.site_id join contact c on c.company_id = m.company_id and c.id = m.contact_id
     where m.state = 'sent' and m.channel = 'email'`,
    [],
  )
  const mails = smtp.taken.map(({ to, text }): Mail => {
    const link = /https?:\/\/\S+\/reminder\/[\w-]+/.exec(text)?.[0] ?? ''
    const named = /^Message-ID:\s*<([^@>]+)@/im.exec(text)?.[1] ?? ''
    // Company, then message, sixteen bytes each, then what signs them.
    const id = Buffer.from(named, 'base64url').subarray(16, 32).toString('hex')
    const of = sent.find((one) => one.id.replaceAll('-', '') === id)
    return { to: to[0] ?? '', site: of?.label ?? '', spanish: of?.language === 'es', link, named, text }
  })
  // Nobody got the same twice, and nobody another's.
  expect(new Set(mails.map((mail) => mail.named)).size).toBe(mails.length)
  for (const mail of mails) expect([mail.to, mail.to === sent.find((one) => one.label === mail.site)?.address]).toEqual([mail.to, true])
  for (const mail of mails) expect([mail.to, mail.link !== '', mail.site !== '']).toEqual([mail.to, true, true])
  const english = mails.filter((mail) => !mail.spanish)
  // As the owner wrote it, and what stands in braces or brackets is text.
  for (const mail of english) expect(mail.text).toMatch(/Hello [\s\S]*Your tank: [\s\S]*<b>/)
  const [days, notNow, done, bounced, stopped] = english as [Mail, Mail, Mail, Mail, Mail]

  const first = await phoneAt(browser, days, mails)
  await first.phone.getByLabel('Which days and times suit you?').fill('Tuesdays <b>after</b> four')
  await first.phone.getByRole('button', { name: 'Send', exact: true }).click()
  await expect(first.phone.getByText('Nothing is booked yet.', { exact: false })).toBeVisible()
  const second = await phoneAt(browser, notNow, mails)
  await second.phone.getByText('Not now', { exact: true }).click()
  await second.phone.getByText('In 3 months').click()
  await second.phone.getByRole('button', { name: 'Ask me later' }).click()
  await expect(second.phone.getByText(/^We’ll ask again in/)).toBeVisible()
  await second.close()
  const third = await phoneAt(browser, done, mails)
  await third.phone.getByText('Already done', { exact: true }).click()
  await third.phone.getByLabel('When was the resin replaced?').fill(new Date(Date.now() - 86_400_000).toISOString().slice(0, 10))
  await third.phone.getByText('Another company').click()
  await third.phone.getByRole('button', { name: 'Tell us' }).click()
  await expect(third.phone.getByText('We noted it', { exact: false })).toBeVisible()
  await third.close()
  // The button of a mail program (RFC 8058, 3.2): a POST without cookies.
  const stop = await fetch(`${stopped.link.replace('/reminder/', '/api/reminder/')}/stop`, {
    ...{ method: 'POST', body: 'List-Unsubscribe=One-Click', headers: { 'content-type': 'application/x-www-form-urlencoded' } },
  })
  expect(stop.status).toBe(204)

  // Whoever asked for a visit is offered times, and takes one by the link that they have.
  const [job] = await askDatabase<{ id: string }>(`select id from job where asked_for::text like $1`, ['%Tuesdays <b>after</b> four%'])
  await page.goto(`/jobs/${job?.id}`)
  await expect(page.getByText('Tuesdays <b>after</b> four', { exact: false }).first()).toBeVisible()
  await page.getByRole('button', { name: 'Offer times' }).click()
  await page.getByRole('button', { name: 'Hold and create link' }).click()
  await expect(page.getByText('offered', { exact: true }).first()).toBeVisible()
  await first.phone.goto(`${days.link}?l=en`)
  await first.phone.getByRole('link', { name: 'Choose a time' }).click()
  await first.phone.getByRole('radio').first().check()
  await first.phone.getByRole('button', { name: 'Choose this time' }).click()
  await expect(first.phone.getByText(/^We’ll be there on/)).toBeVisible()
  await first.close()

  const imap = await mailbox([reportOfDelivery({ messageId: bounced.named, to: bounced.to })])
  await work('read-bounces', companyId, { ...mailing, BOUNCE_IMAP_URL: imap.url })
  expect(await imap.seen()).toEqual([true])
  await imap.close()
  await smtp.close()

  await page.goto('/reminders?view=check')
  await page.locator('summary').filter({ hasText: bounced.to }).click()
  await expect(page.getByText('The address doesn’t take mail (5.1.1).')).toBeVisible()
  await page.goto('/reminders?view=answers')
  for (const [mail, said] of [
    [days, 'Wants a visit'],
    [notNow, 'Not now'],
    [done, 'Already done'],
    [stopped, 'No more reminders'],
  ] as const)
    await expect(page.getByRole('listitem').filter({ hasText: mail.site }).filter({ hasText: said }).first()).toBeVisible()
  await page.goto('/calls')
  await expect(page.getByText('A reminder by email came back.', { exact: false }).first()).toBeVisible()
})
