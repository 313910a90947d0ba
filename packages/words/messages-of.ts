import { type Language, languageOf } from '@almanac/records/language'
import type { Catalogue, FieldCatalogue } from './catalogue.ts'
import { en } from './en/all.ts'
import { field as fieldEn } from './en/field.ts'
import { es } from './es/all.ts'
import { field as fieldEs } from './es/field.ts'

const PARTS = {
  office: { en, es } satisfies Record<Language, Catalogue>,
  field: { en: fieldEn, es: fieldEs } satisfies Record<Language, FieldCatalogue>,
}

/** The messages of the office's or of the tablet's pages in the language of a locale; for the server, which hands them on with the page. */
export const messagesOf = (part: keyof typeof PARTS, locale: string): Catalogue | FieldCatalogue => PARTS[part][languageOf(locale)]
