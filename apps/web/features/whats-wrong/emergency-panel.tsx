import type { Emergency } from '@almanac/softener/diagnosis/emergency'
import { LinkButton } from '@almanac/ui/link-button'
import Link from 'next/link'

/** Beads at the taps: what to say at once, before anything else on the page. */
export function EmergencyPanel({ emergency, proposeHref }: { emergency: Emergency; proposeHref: string | null }) {
  return (
    <section role="alert" aria-label="Emergency" className="mb-6 border-2 border-danger bg-sheet p-4 sm:p-5">
      <h2 className="text-h2 font-bold text-danger">{emergency.title}</h2>
      <p className="mt-1">{emergency.why}</p>
      <h3 className="mt-4 font-semibold">Say on the phone, in this order</h3>
      <ol className="mt-1 list-decimal pl-6 marker:font-semibold">
        {emergency.sayNow.map((line) => (
          <li key={line} className="py-1 pl-1">
            {line}
          </li>
        ))}
      </ol>
      <h3 className="mt-4 font-semibold">Whoever goes out</h3>
      <ol className="mt-1 list-decimal pl-6">
        {emergency.onSite.map((line) => (
          <li key={line} className="py-1 pl-1">
            {line}
          </li>
        ))}
      </ol>
      {proposeHref ? (
        <p className="mt-4">
          <LinkButton href={proposeHref} kind="danger" link={Link}>
            Add emergency job
          </LinkButton>
        </p>
      ) : null}
      <p className="mt-3 text-small text-soft">Source: {emergency.source}.</p>
    </section>
  )
}
