import { type Language, languageOf } from '@almanac/records/language'
import type { Catalogue, FieldCatalogue, PublicCatalogue } from './catalogue.ts'
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

/** The messages of one part of the pages in the language of a locale; for the server, which hands them on with the page. `public` is before signing in. */
export const messagesOf = (part: keyof typeof PARTS, locale: string): Messages => PARTS[part][languageOf(locale)]

/** What a page brings. */
export type Messages = Catalogue | FieldCatalogue | PublicCatalogue
