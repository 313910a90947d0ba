import { config, forgetConfig } from '@almanac/runtime/config'
import { log } from '@almanac/runtime/log'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { textServer } from '../../tests/support/text-server.ts'
import { postText, textsWork } from './send-text.ts'
import { dialable } from './text-number.ts'

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

const text = { id: 'one', to: '(630) 555-0142', locale: 'en-US', from: 'Weir Road Water', text: 'Ñandú {x} "y"\n' }

describe('a text', () => {
  test('arrives whole, once, under its id and with the token', async () => {
    const server = await textServer()
    serveWith({ TEXT_URL: server.url, TEXT_TOKEN: 'let-me-in' })
    expect(textsWork()).toBe(true)
    expect(await postText(text, log())).toEqual({ outcome: 'taken' })
    await server.close()
    expect(server.taken).toEqual([{ id: 'one', to: '+16305550142', from: 'Weir Road Water', text: text.text }])
    expect(server.heads[0]).toMatchObject({
      authorization: 'Bearer let-me-in',
      'idempotency-key': 'one',
      'content-type': 'application/json',
    })
  })

  // RFC 9110, 15.5 and 15.6: what a status says of the request, of the server, and what it leaves open.
  test.each([
    [200, { outcome: 'taken' }],
    [409, { outcome: 'taken' }],
    [302, { outcome: 'later', wholeServer: true }],
    [400, { outcome: 'refused' }],
    [401, { outcome: 'later', wholeServer: true }],
    [404, { outcome: 'later', wholeServer: true }],
    [408, { outcome: 'later', wholeServer: false }],
    [422, { outcome: 'refused' }],
    [429, { outcome: 'later', wholeServer: true }],
    [500, { outcome: 'uncertain' }],
    [503, { outcome: 'later', wholeServer: true }],
    [504, { outcome: 'uncertain' }],
    ['hang-up', { outcome: 'uncertain' }],
  ] as const)('that is answered with %s: %j', async (status, came) => {
    const server = await textServer({ answer: () => status })
    serveWith({ TEXT_URL: server.url, TEXT_TOKEN: 'let-me-in' })
    const posted = await postText(text, log())
    await server.close()
    expect(posted).toMatchObject(came)
    expect(JSON.stringify(posted)).not.toMatch(/630|let-me-in/)
  })

  test('that finds no server is for later, and a number that is none goes nowhere', async () => {
    const server = await textServer()
    await server.close()
    serveWith({ TEXT_URL: server.url, TEXT_TOKEN: 'let-me-in' })
    expect(await postText(text, log())).toMatchObject({ outcome: 'later', wholeServer: true })
    expect(await postText({ ...text, to: 'ask at the shop' }, log())).toMatchObject({ outcome: 'refused' })
  })
})

// ITU-T E.164, and each region's own trunk prefix: none in the United States, 0 in Ireland and Germany, 1 before a US number.
test.each([
  ['(630) 555-0142', 'en-US', '+16305550142'],
  ['1-630-555-0142', 'es-US', '+16305550142'],
  ['+353 1 555 3438', 'en-US', '+35315553438'],
  ['01 555 3438', 'en-IE', '+35315553438'],
  ['030 901820', 'de-DE', '+4930901820'],
  ['12', 'en-US', null],
  ['none', 'en-US', null],
  ['630 555 0142', 'en', null],
])('%s at %s is dialed as %s', (phone, locale, number) => expect(dialable(phone, locale)).toBe(number))

test.each([
  [{ TEXT_URL: 'http://texts.example/send' }, 'TEXT_URL and TEXT_TOKEN go together'],
  [{ TEXT_TOKEN: 'let-me-in' }, 'TEXT_URL and TEXT_TOKEN go together'],
  [{ TEXT_URL: 'sms://texts.example', TEXT_TOKEN: 'x' }, 'must begin with http:// or https://'],
])('the settings %j are refused with a sentence', (settings, sentence) => {
  serveWith(settings as Record<string, string>)
  expect(() => config()).toThrow(sentence)
})
