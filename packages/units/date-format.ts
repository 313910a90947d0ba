import { regionLocale } from './region-locale.ts'

const formatters = new Map<string, Intl.DateTimeFormat>()

/** The platform's formatter of days and clocks for a locale and options, made once: making one takes a hundred times as long as using it. */
export function dateFormat(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`
  let format = formatters.get(key)
  if (!format) {
    // Words are the language's, the clock is the region's.
    const region = options.timeStyle === undefined ? null : regionLocale(locale)
    const { hourCycle } = new Intl.DateTimeFormat(region ?? locale, { timeStyle: 'short' }).resolvedOptions()
    format = new Intl.DateTimeFormat(locale, region === null ? options : { ...options, hourCycle })
    formatters.set(key, format)
  }
  return format
}

/**
 * Engines differ in the spaces they write days and clocks with, which would make a page from the server differ from the browser's: one plain space, and one that does
 * not break between a time and its half of the day.
 */
export const evenSpaces = (text: string): string => text.replace(/[\u00a0\u2009\u202f]/g, ' ').replace(/(:\d\d) (?=\p{L})/gu, '$1\u00a0')
