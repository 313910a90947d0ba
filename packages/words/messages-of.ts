import { type Language, languageOf } from '@almanac/records/language'
import type { Catalogue, FieldCatalogue, PublicCatalogue } from './catalogue.ts'
import { compileMessages } from './compile-messages.ts'
import { en } from './en/all.ts'
import { field as fieldEn } from './en/field.ts'
import { publicPages as publicEn } from './en/public.ts'
import { es } from './es/all.ts'
import { field as fieldEs } from './es/field.ts'
import { publicPages as publicEs } from './es/public.ts'

const PARTS = {
  office: { en, es } satisfies Record<Language, Catalogue>,
  field: { en: fieldEn, es: fieldEs } satisfies Record<Language, FieldCatalogue>,
  public: { en: publicEn, es: publicEs } satisfies Record<Language, PublicCatalogue>,
}

/** What a page brings. */
export type Messages = ReturnType<typeof compileMessages>

const made = new Map<string, Messages>()

/** The messages of one part of the pages in the language of a locale; for the server, which hands them on with the page. `public` is before signing in. */
export function messagesOf(part: keyof typeof PARTS, locale: string): Messages {
  const language = languageOf(locale)
  const key = `${part} ${language}`
  const messages = made.get(key) ?? compileMessages(PARTS[part][language])
  made.set(key, messages)
  return messages
}
