const formatters = new Map<string, Intl.DateTimeFormat>()

/** The platform's formatter of days and clocks for a locale and options, made once: making one takes a hundred times as long as using it. */
export function dateFormat(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`
  let format = formatters.get(key)
  if (!format) {
    format = new Intl.DateTimeFormat(locale, options)
    formatters.set(key, format)
  }
  return format
}
