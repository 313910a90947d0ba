import type { Emergency } from '@almanac/softener/diagnosis/emergency'
import { LinkButton } from '@almanac/ui/link-button'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'

/** Beads at the taps: what to say at once, before anything else on the page. */
export function EmergencyPanel({ emergency, proposeHref }: { emergency: Emergency; proposeHref: string | null }) {
  const words = useWords('emergency')
  const said = useWords('diagnosis')
  return (
    <section role="alert" aria-label={words('name')} className="mb-6 border-2 border-danger bg-sheet p-4 sm:p-5">
      <h2 className="text-h2 font-bold text-danger">{words('title')}</h2>
      <p className="mt-1">{words('why')}</p>
      <h3 className="mt-4 font-semibold">{words('say')}</h3>
      <ol className="mt-1 list-decimal pl-6 marker:font-semibold">
        {emergency.sayNow.map((line) => (
          <li key={line} className="py-1 pl-1">
            {words(line)}
          </li>
        ))}
      </ol>
      <h3 className="mt-4 font-semibold">{words('do')}</h3>
      <ol className="mt-1 list-decimal pl-6">
        {emergency.onSite.map((line) => (
          <li key={line} className="py-1 pl-1">
            {words(line)}
          </li>
        ))}
      </ol>
      {proposeHref ? (
        <p className="mt-4">
          <LinkButton href={proposeHref} kind="danger" link={Link}>
            {words('add')}
          </LinkButton>
        </p>
      ) : null}
      <p className="mt-3 text-small text-soft">{words('source', { source: said(emergency.source) })}</p>
    </section>
  )
}
