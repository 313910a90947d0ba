import { type Language, languageOf } from '@almanac/records/language'
import { createTranslator } from 'use-intl/core'
import type { Catalogue, Room } from './catalogue.ts'
import { en } from './en/all.ts'
import { es } from './es/all.ts'
import type { Words } from './words.ts'

const CATALOGUES: Readonly<Record<Language, Catalogue>> = { en, es }
const made = new Map<string, unknown>()

/**
 * The words of a room for a locale (BCP 47), for what is made away from a browser: pages from the server, papers, mail. Browsers load one language
 * alone, through their provider. Throws on a message that lacks a value: a letter with a hole is not sent.
 */
export function wordsIn<Name extends Room>(locale: string, room: Name): Words<Name> {
  const key = `${locale} ${room}`
  const known = made.get(key)
  if (known) return known as Words<Name>
  const translator = createTranslator({
    locale,
    messages: CATALOGUES[languageOf(locale)] as typeof en,
    namespace: room,
    onError: (problem) => {
      throw problem
    },
  }) as Words<Name>
  made.set(key, translator)
  return translator
}
