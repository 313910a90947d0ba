import type { WhomToCall } from '@almanac/contract/site-facts'
import { LinkButton } from '@almanac/ui/link-button'
import { useWords } from '@almanac/words/use-words'
import { PhoneLink, telOf } from './phone-link.tsx'

/** Customer and number in one line, for lists and sheets; nothing where nobody holds the site. */
export function WhomLine({ whom }: { whom: WhomToCall }) {
  const words = useWords('whom')
  const { customerName, called } = whom
  const other = called?.name && called.name !== customerName ? called.name : null
  if (!customerName && !called) return null
  return (
    <span>
      {[customerName, other].filter(Boolean).join(', ')}{' '}
      {called ? <PhoneLink phone={called.phone} /> : <span className="text-soft">{words('noPhone')}</span>}
    </span>
  )
}

/** Whom to call, as the first thing to do on a page: one dark button with the number. */
export function WhomBlock({ whom }: { whom: WhomToCall }) {
  const [words, roles] = [useWords('whom'), useWords('contactRole')]
  const { customerName, called } = whom
  const role = called ? roles(called.role).toLowerCase() : ''
  return (
    <div>
      <p className="flex flex-wrap items-baseline justify-between gap-x-4 print:justify-start">
        <span className="text-h2 font-semibold">{called?.name ?? customerName ?? words('noCustomer')}</span>
        <span className="text-small text-soft">
          {role && called?.name && customerName && called.name !== customerName ? words('roleFor', { role, customer: customerName }) : role}
        </span>
      </p>
      {called ? (
        <p className="mt-2 flex">
          <LinkButton href={telOf(called.phone)} kind="ink" wide>
            {words('call', { phone: called.phone })}
          </LinkButton>
          <span className="hidden print:block">{called.phone}</span>
        </p>
      ) : (
        <p className="text-soft">{words(customerName ? 'noPhoneRecorded' : 'noCustomerNow')}</p>
      )}
      {called?.otherPhones.map((other) => (
        <p key={other} className="mt-1">
          {words.rich('or', { phone: () => <PhoneLink phone={other} /> })}
        </p>
      ))}
      {called?.mayCall === false ? <p className="mt-1 text-small">{words('notCalled')}</p> : null}
    </div>
  )
}
