export const said = (at: Date, locale: string): string => new Intl.DateTimeFormat(locale).format(at)
