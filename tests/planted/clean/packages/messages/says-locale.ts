export const said = (at: Date, locale: string) => ({ locale, day: at.toISOString() })
