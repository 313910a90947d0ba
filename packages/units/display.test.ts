import { expect, it } from 'vitest'
import { isLocale } from './display.ts'

// BCP 47 (RFC 5646 §2.1): language-script-region, in the case that section 2.1.1 recommends.
it.each(['en-US', 'en-GB', 'en-IE', 'de-DE', 'fr-CA', 'es-419', 'zh-Hant-TW'])('%s is a locale', (tag) => expect(isLocale(tag)).toBe(true))
it.each(['', 'english', 'en_US', 'EN-us', 'xx-YY', 'en-', '12', 'US'])('"%s" is none', (tag) => expect(isLocale(tag)).toBe(false))
