import { config, forgetConfig } from '@almanac/runtime/config'
import { log } from '@almanac/runtime/log'
import { wordsIn } from '@almanac/words/words-in'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { mailServer } from '../../tests/support/mail-server.ts'
import { acceptedMail, mailWorks, postMail } from './send-mail.ts'
import { invitationMail } from './ways-in-mail.ts'

const NEEDED = {
  DATABASE_URL: 'postgresql://127.0.0.1/none',
  IDENTITY_DATABASE_URL: 'postgresql://127.0.0.1/none',
  AUTH_SECRET: 'a secret that only tests use, and know',
}
function serveWith(settings: Record<string, string | undefined>) {
  for (const [name, value] of Object.entries({ ...NEEDED, ...settings })) vi.stubEnv(name, value)
  forgetConfig()
}
beforeEach(() => serveWith({ LOG_LEVEL: 'silent' }))
afterEach(() => {
  vi.unstubAllEnvs()
  forgetConfig()
})

const url = 'https://almanac.firm.example/join/token'
const mail = {
  to: 'otis@firm.example',
  ...invitationMail(wordsIn('en', 'wayInMail'), { name: 'Otis', by: 'Ada Roe', company: 'Weir Road Water', url }),
}

describe('a mail', () => {
  test('arrives at the mail server, once, with its link whole', async () => {
    const server = await mailServer()
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'Rebed Almanac <almanac@firm.example>' })
    expect(mailWorks()).toBe(true)
    expect(await postMail(mail, log())).toEqual({ outcome: 'taken' })
    await server.close()
    expect(server.taken).toHaveLength(1)
    expect(server.taken[0]?.to).toEqual(['otis@firm.example'])
    for (const words of ['From: Rebed Almanac <almanac@firm.example>', 'Subject: Ada Roe invites you to Weir Road Water', url])
      expect(server.taken[0]?.text).toContain(words)
  })

  test('that the server refuses, or that meets no server, is said not to have gone', async () => {
    const server = await mailServer({ contents: () => ({ code: 452 }) })
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'almanac@firm.example' })
    expect(await acceptedMail(mail, log())).toBe(false)
    await server.close()
    expect(await acceptedMail(mail, log())).toBe(false)
  })

  // RFC 5321, 4.2.1: 4yz is for later, 5yz is no; 421 says that the service itself goes away.
  test.each([
    ['recipient', { code: 450 }, { outcome: 'later', wholeServer: false }],
    ['recipient', { code: 550 }, { outcome: 'refused' }],
    ['recipient', { code: 421 }, { outcome: 'later', wholeServer: true }],
    ['contents', { code: 451 }, { outcome: 'later', wholeServer: false }],
    ['contents', { code: 554 }, { outcome: 'refused' }],
    ['contents', 'hang-up', { outcome: 'uncertain' }],
  ] as const)('whose %s is answered with %j: %j', async (part, answer, came) => {
    const server = await mailServer({ [part]: () => answer })
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'almanac@firm.example' })
    const posted = await postMail(mail, log())
    await server.close()
    expect(posted).toMatchObject(came)
    expect(JSON.stringify(posted)).not.toContain('otis')
  })

  test('that finds no server, or one that it cannot sign in to, is for later', async () => {
    const server = await mailServer()
    await server.close()
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'almanac@firm.example' })
    expect(await postMail(mail, log())).toMatchObject({ outcome: 'later', wholeServer: true })
    const strict = await mailServer({ password: 'right' })
    serveWith({ SMTP_URL: strict.url.replace('//', '//almanac:wrong@'), MAIL_FROM: 'almanac@firm.example' })
    expect(await postMail(mail, log())).toMatchObject({ outcome: 'later', wholeServer: true })
    serveWith({ SMTP_URL: strict.url.replace('//', '//almanac:right@'), MAIL_FROM: 'almanac@firm.example' })
    expect(await postMail(mail, log())).toEqual({ outcome: 'taken' })
    await strict.close()
  })

  test('of a company says its name, its own id, and where to leave the list with one click (RFC 8058, 3.1)', async () => {
    const server = await mailServer()
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'Rebed Almanac <almanac@firm.example>' })
    const unsubscribe = 'https://almanac.firm.example/stop/token'
    await postMail({ ...mail, fromName: 'Weir "Road", Water', id: 'one', unsubscribe }, log())
    await server.close()
    const [head = ''] = (server.taken[0]?.text ?? '').split('\r\n\r\n')
    expect(head.split('\r\n')).toEqual(
      expect.arrayContaining([
        'From: "Weir \\"Road\\", Water" <almanac@firm.example>',
        'Message-ID: <one@firm.example>',
        `List-Unsubscribe: <${unsubscribe}>`,
        'List-Unsubscribe-Post: List-Unsubscribe=One-Click',
      ]),
    )
  })

  test('brings no line of somebody’s name into its head', async () => {
    const server = await mailServer()
    serveWith({ SMTP_URL: server.url, MAIL_FROM: 'almanac@firm.example' })
    const by = 'Ada\r\nBcc: everyone@elsewhere.example'
    await postMail({ to: mail.to, ...invitationMail(wordsIn('en', 'wayInMail'), { name: 'Otis', by, company: 'Weir', url }) }, log())
    await server.close()
    expect(server.taken[0]?.to).toEqual(['otis@firm.example'])
    const [head] = (server.taken[0]?.text ?? '').split('\r\n\r\n')
    expect(head).toContain('Subject: Ada')
    expect(head).not.toMatch(/^Bcc:/m)
  })
})

describe('the settings', () => {
  test.each([
    [{ FOUNDING: 'open' }, 'FOUNDING "open" needs SMTP_URL and MAIL_FROM'],
    [{ FOUNDING: 'everyone' }, 'FOUNDING'],
    [{ SMTP_URL: 'smtp://mail.example' }, 'SMTP_URL and MAIL_FROM go together'],
    [{ MAIL_FROM: 'almanac@firm.example' }, 'SMTP_URL and MAIL_FROM go together'],
    [{ SMTP_URL: 'mail.example', MAIL_FROM: 'almanac@firm.example' }, 'must begin with smtp://'],
  ])('%j are refused with a sentence', (settings, sentence) => {
    serveWith(settings as Record<string, string>)
    expect(() => config()).toThrow(sentence)
  })
  test('without mail are whole, and strangers found nothing', () => {
    expect(config()).toMatchObject({ FOUNDING: 'by-link' })
    expect(mailWorks()).toBe(false)
  })
})
