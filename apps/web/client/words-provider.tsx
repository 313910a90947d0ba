'use client'
import { languageOf } from '@almanac/records/language'
import type { Messages } from '@almanac/words/messages-of'
import { type ReactNode, useEffect } from 'react'
import { IntlProvider } from 'use-intl/react'

type Props = { locale: string; timeZone: string; messages: Messages; children: ReactNode }

/** The words of the office's or of the tablet's pages, which came with the page: nothing waits for them, with signal or without. */
export function WordsProvider({ locale, timeZone, messages, children }: Props) {
  const language = languageOf(locale)
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  return (
    <IntlProvider locale={locale} timeZone={timeZone} messages={{ ...messages }}>
      {children}
    </IntlProvider>
  )
}
