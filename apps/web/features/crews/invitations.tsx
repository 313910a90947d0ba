'use client'
import type { Invitation } from '@almanac/contract/people'
import { roleWords } from '@almanac/records/role'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { formatInstant } from '@almanac/units/format-clock'
import { useMutation } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useFetchChanged } from '@/client/fetch-changed'
import { useSession } from '@/client/providers'

/** Who is invited and has not joined yet. */
export function Invitations({ invitations }: { invitations: readonly Invitation[] }) {
  const { api, me } = useSession()
  const changed = useFetchChanged()
  const withdraw = useMutation(api.people.withdraw.mutationOptions({ onSuccess: () => changed('people.withdraw') }))
  if (invitations.length === 0) return null
  return (
    <>
      {withdraw.error ? <Problem happened={readFailure(withdraw.error).message} /> : null}
      <ul className="mb-4">
        {invitations.map(({ id, name, email, role, expiresAt }) => (
          <li key={id} className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-line py-2">
            <span>
              Invited: <strong>{name}</strong>, {roleWords[role]}
              {email ? `, ${email}` : ''}
              <span className="block text-small text-soft">The link works until {formatInstant(expiresAt, me.company)}</span>
            </span>
            <Button
              kind="quiet"
              busy={withdraw.isPending}
              aria-label={`Withdraw the invitation of ${name}`}
              onClick={() => withdraw.mutate({ invitationId: id })}
            >
              Withdraw
            </Button>
          </li>
        ))}
      </ul>
    </>
  )
}
