import { expect, test } from 'vitest'
import { languageOf, localeFor } from './language.ts'

// Tags by BCP 47; regions of tags without one by CLDR's likely subtags.
test.each([
  ['es', 'en-US', 'es-US'],
  ['es', 'en-GB', 'es-GB'],
  ['en', 'de-DE', 'en-DE'],
  ['en', 'en-GB', 'en-GB'],
  [null, 'de-DE', 'de-DE'],
  ['es', 'en', 'es-US'],
] as const)('%s at a company that writes %s reads %s', (language, company, locale) => {
  expect(localeFor(language, company)).toBe(locale)
})

test('a language the app does not speak is read in English', () => {
  expect(languageOf('es-US')).toBe('es')
  expect(languageOf('de-DE')).toBe('en')
})
