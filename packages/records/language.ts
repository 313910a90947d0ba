/** Languages the app speaks, by ISO 639. A person reads one of them; a company's locale says how it writes numbers and days. */
export const languages = ['en', 'es'] as const
export type Language = (typeof languages)[number]

/** Each language by its own name, so that whoever reads no other finds it. */
export const languageWords: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' }

/** Languages whose trade words no native technician has read yet: the menu says so. */
export const unreviewedLanguages: readonly Language[] = ['es']

const isLanguage = (text: string): text is Language => (languages as readonly string[]).includes(text)

/** The language of a locale (BCP 47): 'es' of 'es-US'. English where the app does not speak it. */
export function languageOf(locale: string): Language {
  const { language } = new Intl.Locale(locale)
  return isLanguage(language) ? language : 'en'
}

/**
 * The locale in which somebody reads a company's values: their language in the company's region, so that numbers, days and paper stay those of the
 * place. Without a language of their own, or with the company's, it is the company's locale.
 */
export function localeFor(language: Language | null, companyLocale: string): string {
  const company = new Intl.Locale(companyLocale)
  if (language === null || language === company.language) return companyLocale
  return new Intl.Locale(language, { region: company.maximize().region }).toString()
}
