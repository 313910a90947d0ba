import { languages } from '@almanac/records/language'
import { messageFormatters } from '@almanac/units/message-formatters'
import { createElement, Fragment, type ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { createTranslator } from 'use-intl/core'
import { expect, test } from 'vitest'
import { givenTo } from '../../tests/support/message-parts.ts'
import { en } from './en/all.ts'
import { es } from './es/all.ts'
import { messagesOf } from './messages-of.ts'
import { speak } from './speak.ts'

// Expected is what FormatJS says (intl-messageformat, the reference library of ICU's syntax in JavaScript), which papers and mail are written with.
const CATALOGUES: Record<(typeof languages)[number], Record<string, Record<string, string>>> = { en, es }
const LOCALES = { en: 'en-US', es: 'es-US' } as const
/** Each of CLDR's plural forms in these languages, none, and one that is written with a mark between its digits. */
const COUNTS = [0, 1, 2, 21, 1_000_000]

type Say = { rich: (key: string, values: Record<string, unknown>) => ReactNode }
const html = (said: ReactNode) => renderToStaticMarkup(createElement(Fragment, null, said))

/** Values for all that a message is given, its plurals by `count`. */
const valuesFor = (message: string, count: number) =>
  Object.fromEntries(
    givenTo(message).map((name) => {
      if (name.startsWith('<')) return [name.slice(1, -1), (text: ReactNode) => createElement('b', null, text)]
      const [plain = '', kind] = name.split(':')
      return [plain, kind === 'plural' ? count : kind === 'select' ? 'owner' : `{${plain}} & <co>`]
    }),
  )

test.each(languages)('%s: pages say each message as papers and mail do', (language) => {
  const locale = LOCALES[language]
  const spoken = { locale, messages: messagesOf('office', locale), options: { formatters: messageFormatters, timeZone: 'UTC' } }
  const differing: string[] = []
  for (const [room, said] of Object.entries(CATALOGUES[language])) {
    const ours = speak(spoken, room as 'visit') as unknown as Say
    const theirs = createTranslator({ locale, messages: CATALOGUES[language], namespace: room }) as unknown as Say
    for (const [key, message] of Object.entries(said))
      for (const count of message.includes('plural') ? COUNTS : [1]) {
        const values = valuesFor(message, count)
        if (html(ours.rich(key, values)) !== html(theirs.rich(key, values))) differing.push(`${room}.${key}, ${count}`)
      }
  }
  expect(differing).toEqual([])
})

test('a page is handed data alone', () => {
  const messages = messagesOf('office', 'en-US')
  expect(messages).toStrictEqual(JSON.parse(JSON.stringify(messages)))
})

test('a message that is not there is named in its place', () => {
  const spoken = { locale: 'en-US', messages: { visit: {} }, options: { formatters: messageFormatters, timeZone: 'UTC' } }
  expect(speak(spoken, 'visit')('loading')).toBe('visit.loading')
})
