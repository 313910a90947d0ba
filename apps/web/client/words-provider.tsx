'use client'
import { type Language, languageOf } from '@almanac/records/language'
import type { Catalogue, FieldCatalogue } from '@almanac/words/catalogue'
import { type ReactNode, use, useEffect } from 'react'
import { IntlProvider } from 'use-intl/react'

type Messages = Catalogue | FieldCatalogue

/** One piece of script a language, kept by the browser like any other: what is spoken elsewhere is not loaded. */
const LOADERS: Readonly<Record<'office' | 'field', Readonly<Record<Language, () => Promise<Messages>>>>> = {
  office: {
    en: async () => (await import('@almanac/words/en/all')).en,
    es: async () => (await import('@almanac/words/es/all')).es,
  },
  field: {
    en: async () => (await import('@almanac/words/en/field')).field,
    es: async () => (await import('@almanac/words/es/field')).field,
  },
}

const loading = new Map<string, Promise<Messages>>()
const loaded = new Map<string, Messages>()

/** Brings the words of a part in; at once where they are there already. */
export function loadWords(part: 'office' | 'field', language: Language): Messages | Promise<Messages> {
  const key = `${part} ${language}`
  const there = loaded.get(key)
  if (there) return there
  const coming =
    loading.get(key) ??
    LOADERS[part][language]().then((messages) => {
      loaded.set(key, messages)
      return messages
    })
  loading.set(key, coming)
  return coming
}

type Props = { locale: string; timeZone: string; part: 'office' | 'field'; children: ReactNode }

/** The words of the office's or of the tablet's pages, in the language of `locale`. */
export function WordsProvider({ locale, timeZone, part, children }: Props) {
  const language = languageOf(locale)
  const found = loadWords(part, language)
  const messages = found instanceof Promise ? use(found) : found
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  return (
    <IntlProvider locale={locale} timeZone={timeZone} messages={{ ...messages }}>
      {children}
    </IntlProvider>
  )
}
