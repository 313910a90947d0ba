import type { WhomToCall } from '@almanac/contract/site-facts'
import { contactRoleWords } from '@almanac/records/contact-role'
import { LinkButton } from '@almanac/ui/link-button'
import { PhoneLink, telOf } from './phone-link.tsx'

/** Customer and number in one line, for lists and sheets; nothing where nobody holds the site. */
export function WhomLine({ whom }: { whom: WhomToCall }) {
  const { customerName, called } = whom
  const other = called?.name && called.name !== customerName ? called.name : null
  if (!customerName && !called) return null
  return (
    <span>
      {[customerName, other].filter(Boolean).join(', ')}{' '}
      {called ? <PhoneLink phone={called.phone} /> : <span className="text-soft">no phone number</span>}
    </span>
  )
}

/** Whom to call, as the first thing to do on a page: one dark button with the number. */
export function WhomBlock({ whom }: { whom: WhomToCall }) {
  const { customerName, called } = whom
  return (
    <div>
      <p className="flex flex-wrap items-baseline justify-between gap-x-4 print:justify-start">
        <span className="text-h2 font-semibold">{called?.name ?? customerName ?? 'No customer'}</span>
        <span className="text-small text-soft">
          {called ? contactRoleWords[called.role].toLowerCase() : ''}
          {called?.name && customerName && called.name !== customerName ? ` for ${customerName}` : ''}
        </span>
      </p>
      {called ? (
        <p className="mt-2 flex">
          <LinkButton href={telOf(called.phone)} kind="ink" wide>
            Call {called.phone}
          </LinkButton>
          <span className="hidden print:block">{called.phone}</span>
        </p>
      ) : (
        <p className="text-soft">{customerName ? 'No phone number recorded.' : 'No customer at this site now.'}</p>
      )}
      {called?.otherPhones.map((other) => (
        <p key={other} className="mt-1">
          or <PhoneLink phone={other} />
        </p>
      ))}
      {called?.mayCall === false ? <p className="mt-1 text-small">Asked not to be called.</p> : null}
    </div>
  )
}
