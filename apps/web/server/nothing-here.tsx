import 'server-only'
import { wordsIn } from '@almanac/words/words-in'
import { meOf } from './procedures/session.ts'
import { signedIn } from './signed-in.ts'

/** What an address says where there is nothing. It says the same of what is another company's as of what never was. */
export function NothingHere({ locale, fromLink = false }: { locale: string; fromLink?: boolean }) {
  const words = wordsIn(locale, 'nothingHere')
  return (
    <>
      <h1 className="text-h1 font-semibold">{words('title')}</h1>
      <p className="mt-3 max-w-[60ch]">{words('why')}</p>
      {fromLink ? <p className="mt-2 max-w-[60ch]">{words('sentLink')}</p> : null}
      <p className="mt-6">
        <a href="/" className="underline decoration-edge underline-offset-4 hover:decoration-ink">
          {words('home')}
        </a>
      </p>
    </>
  )
}

/** Of a record that the company has not, inside the frame that leads on. */
export async function NoSuchRecord() {
  return <NothingHere locale={(await meOf(await signedIn())).company.locale} />
}
