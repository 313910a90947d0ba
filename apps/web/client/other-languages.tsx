import { languageOf, languages, languageWords } from '@almanac/records/language'
import { wordsIn } from '@almanac/words/words-in'

/** A customer's page in the languages that it is not in now. Works without scripts. */
export function OtherLanguages({ locale }: { locale: string }) {
  return (
    <nav aria-label={wordsIn(locale, 'common')('languages')} className="flex gap-4">
      {languages
        .filter((one) => one !== languageOf(locale))
        .map((one) => (
          <a key={one} href={`?l=${one}`} hrefLang={one} lang={one} className="py-3 underline underline-offset-4">
            {languageWords[one]}
          </a>
        ))}
    </nav>
  )
}
