'use client'
import type { Member, ShownOnce } from '@almanac/contract/people'
import { oneOf } from '@almanac/records/choices'
import { roles } from '@almanac/records/role'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { deviceWords, sinceWords } from '@/client/device-words'
import { readFailure } from '@/client/failure'
import { useFetchChanged } from '@/client/fetch-changed'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { HandOver } from './hand-over.tsx'
import { RoleChoice } from './role-choice.tsx'

/** What an owner can do about somebody's sign-in: the role, their devices, a forgotten password, and ending it. */
export function ChangeSignIn({ member, onClose }: { member: Member; onClose: () => void }) {
  const words = useWords('ownAccount')
  const { api, me } = useSession()
  const today = useToday()
  const changed = useFetchChanged()
  const [role, setRole] = useState<string>(member.role)
  const [ending, setEnding] = useState(false)
  const [made, setMade] = useState<ShownOnce | null>(null)
  const done = async () => {
    await changed('people.changeRole')
    onClose()
  }
  const change = useMutation(api.people.changeRole.mutationOptions({ onSuccess: done }))
  const end = useMutation(api.people.endAccess.mutationOptions({ onSuccess: done }))
  const endSession = useMutation(api.people.endSession.mutationOptions({ onSuccess: () => changed('people.endSession') }))
  const passwordLink = useMutation(api.people.passwordLink.mutationOptions({ onSuccess: setMade }))
  const error = change.error ?? end.error ?? endSession.error ?? passwordLink.error
  const { personId, name } = member
  if (made) return <HandOver made={made} title={`New password for ${name}`} what={`sets a new password for ${name}`} onClose={onClose} />
  return (
    <FormDialog
      title={`Sign-in of ${name}`}
      lead={member.email}
      onClose={onClose}
      onSubmit={() =>
        role === member.role ? onClose() : change.mutate({ personId, role: oneOf(roles, role) ?? member.role, seen: member.role })
      }
      busy={change.isPending}
      error={null}
    >
      {error ? <Problem happened={readFailure(error).message} /> : null}
      <RoleChoice hint="A change holds at once, on open pages too" value={role} onChange={setRole} />
      <section>
        <h3 className="font-medium">Devices</h3>
        {member.sessions.length === 0 ? <p className="text-soft">Not signed in anywhere.</p> : null}
        <ul>
          {member.sessions.map((one) => (
            <li key={one.id} className="flex flex-wrap items-center justify-between gap-x-4 border-b border-line py-2">
              <span>
                {deviceWords(one.device, words, name)}
                <span className="block text-small text-soft">
                  {words('signedIn', { since: sinceWords(one.startedAt, today, me.company, words) })}
                </span>
              </span>
              <Button
                kind="quiet"
                busy={endSession.isPending}
                aria-label={`End session: ${deviceWords(one.device, words, name)}`}
                onClick={() => endSession.mutate({ sessionId: one.id })}
              >
                End session
              </Button>
            </li>
          ))}
        </ul>
      </section>
      <section className="flex flex-col items-start gap-2">
        <h3 className="font-medium">Forgotten password</h3>
        {member.elsewhere ? (
          <p className="text-soft">{name} works for another company here too, so only they can reset their password, by mail.</p>
        ) : (
          <Button busy={passwordLink.isPending} onClick={() => passwordLink.mutate({ personId })}>
            Make a password link
          </Button>
        )}
      </section>
      <section className="flex flex-col items-start gap-2">
        <h3 className="font-medium">End access</h3>
        {ending ? (
          <>
            <p>End {name}’s access? Their pages close at once. What they did stays on record, and so does their place on day sheets.</p>
            <span className="flex flex-wrap gap-3">
              <Button onClick={() => setEnding(false)}>Keep access</Button>
              <Button kind="danger" busy={end.isPending} onClick={() => end.mutate({ personId })}>
                End access
              </Button>
            </span>
          </>
        ) : (
          <Button onClick={() => setEnding(true)}>End access</Button>
        )}
      </section>
    </FormDialog>
  )
}
