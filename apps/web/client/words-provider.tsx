'use client'
import { languageOf } from '@almanac/records/language'
import { messageFormatters } from '@almanac/units/message-formatters'
import type { Messages } from '@almanac/words/messages-of'
import { WordsContext } from '@almanac/words/use-words'
import { type ReactNode, useEffect, useMemo } from 'react'

type Props = { locale: string; timeZone: string; messages: Messages; children: ReactNode }

/** The words of the office's or of the tablet's pages, which came with the page: nothing waits for them, with signal or without. */
export function WordsProvider({ locale, timeZone, messages, children }: Props) {
  const language = languageOf(locale)
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  const spoken = useMemo(() => ({ locale, messages, options: { formatters: messageFormatters, timeZone } }), [locale, timeZone, messages])
  return <WordsContext value={spoken}>{children}</WordsContext>
}
