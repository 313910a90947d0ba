import 'server-only'
import { type Language, languages } from '@almanac/records/language'
import Negotiator from 'negotiator'

/** The language that a browser asks for (Accept-Language, RFC 9110) as far as the app speaks it, else English: for pages where nobody is known yet. */
export function browserLanguage(headers: Pick<Headers, 'get'>): Language {
  const asked = new Negotiator({ headers: { 'accept-language': headers.get('accept-language') ?? undefined } })
  return (asked.language([...languages]) as Language | undefined) ?? 'en'
}
