import type { VisitPage } from '@almanac/contract/visits'
import { twinName } from '@almanac/softener/tanks/twin-name'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { formatHardnessGpg } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { directionsTo } from '@/client/directions'
import { telOf } from '@/client/phone-link'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { EmptiedPart } from './emptied-part.tsx'

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <>
      <h2 className="mt-5 mb-1 font-semibold">{title}</h2>
      <ul className="border-t border-line">{children}</ul>
    </>
  )
}

/** What was done, left for the next time and measured here before; nothing where it is the first visit. */
function Before({ visit: { before, tests } }: { visit: VisitPage }) {
  const display = useDisplay()
  const { me } = useSession()
  const words = useWords('visit')
  const kinds = useWords('jobKind')
  const outcomes = useWords('outcome')
  return (
    <>
      {before.length > 0 ? (
        <Part title={words('before')}>
          {before.map(({ day, kind, outcome, notes }) => (
            <li key={`${day} ${kind} ${notes}`} className="border-b border-line py-2">
              {[formatDay(day, display), kinds(kind), outcome ? outcomes(outcome).toLowerCase() : null].filter(Boolean).join(' · ')}
              {notes ? <span className="block font-medium whitespace-pre-line">{notes}</span> : null}
            </li>
          ))}
        </Part>
      ) : null}
      {tests.length > 0 ? (
        <Part title={words('tests')}>
          {tests.map(({ day, point, hardnessGpg }) => (
            <li key={`${day} ${point} ${hardnessGpg}`} className="flex justify-between gap-4 border-b border-line py-2">
              <span>
                {formatDay(day, display)} · {words(`point/${point}`)}
              </span>
              <strong className="shrink-0 font-semibold">{formatHardnessGpg(hardnessGpg, me.company)}</strong>
            </li>
          ))}
        </Part>
      ) : null}
    </>
  )
}

/** Where, whom to call, which softener, and what is known from before: before the first step, and a touch away at each. */
export function VisitFacts({ visit }: { visit: VisitPage }) {
  const words = useWords('visit')
  const roles = useWords('contactRole')
  const firm = useRebedFirm()
  const softener = visit.twin
    ? words('softenerTank', {
        softener: visit.softenerLabel ?? words('softener'),
        tank: twinName(visit.twin, firm),
        arrangement: words(`arrangement/${visit.twin.arrangement}`),
      })
    : visit.softenerLabel
  const place = [visit.street, visit.town].filter(Boolean).join(', ')
  return (
    <>
      <EmptiedPart visit={visit} />
      <DefinitionList
        facts={[
          { name: words('where'), value: place },
          { name: words('access'), value: visit.accessNotes },
          ...visit.contacts.map((contact, i) => ({
            key: `contact-${i}`,
            name: roles(contact.role),
            value: (
              <>
                {contact.name ?? words('nameUnknown')}{' '}
                {contact.phone ? (
                  <a href={telOf(contact.phone)} className="inline-flex min-h-control items-center underline underline-offset-4">
                    {contact.phone}
                  </a>
                ) : null}
              </>
            ),
          })),
          { name: words('softener'), value: softener },
        ]}
      />
      <div className="my-4 flex flex-wrap gap-3">
        {visit.contacts.map((contact) =>
          contact.phone ? (
            <LinkButton key={`${contact.role} ${contact.name} ${contact.phone}`} href={telOf(contact.phone)}>
              {words('call', { name: contact.name ?? roles(contact.role).toLowerCase() })}
            </LinkButton>
          ) : null,
        )}
        {place ? <LinkButton href={directionsTo(place)}>{words('directions')}</LinkButton> : null}
      </div>
      <Before visit={visit} />
    </>
  )
}
