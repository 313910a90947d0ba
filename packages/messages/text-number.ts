import { type CountryCode, isSupportedCountry, parsePhoneNumberFromString } from 'libphonenumber-js'

/**
 * A number as networks dial it (ITU-T E.164, `+16305550142`), read as the company's region writes numbers; null where it is none. `locale` is the company's,
 * as `en-US`.
 */
export function dialable(phone: string, locale: string): string | null {
  const region = locale.match(/-([A-Z]{2})\b/)?.[1] ?? ''
  const read = parsePhoneNumberFromString(phone, isSupportedCountry(region) ? (region as CountryCode) : undefined)
  return read?.isPossible() ? read.number : null
}
