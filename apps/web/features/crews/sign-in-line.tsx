'use client'
import type { Member } from '@almanac/contract/people'
import { roleWords } from '@almanac/records/role'
import { Button } from '@almanac/ui/button'
import { useWords } from '@almanac/words/use-words'
import { deviceWords } from '@/client/device-words'

/** How somebody signs in, and what an owner can do about it. Nothing of it is shown to others. */
export function SignInLine({ member, name, onChange, onInvite }: Props) {
  const words = useWords('ownAccount')
  if (!member)
    return (
      <p className="flex flex-wrap items-baseline justify-between gap-x-4 border-t border-line py-2">
        <span className="text-soft">No sign-in</span>
        {onInvite ? (
          <Button kind="quiet" onClick={onInvite} aria-label={`Invite ${name}`}>
            Invite
          </Button>
        ) : null}
      </p>
    )
  const devices = member.sessions.map((one) => deviceWords(one.device, words))
  return (
    <p className="flex flex-wrap items-baseline justify-between gap-x-4 border-t border-line py-2">
      <span className="min-w-0 break-words">
        <strong className="inline-block font-semibold first-letter:uppercase">{roleWords[member.role]}</strong>, {member.email}
        <span className="block text-small text-soft">{devices.length > 0 ? `Signed in: ${devices.join(' · ')}` : 'Not signed in'}</span>
      </span>
      <Button kind="quiet" onClick={onChange} aria-label={`Sign-in of ${member.name}`}>
        Sign-in
      </Button>
    </p>
  )
}

type Props = { member: Member | null; name: string; onChange: () => void; onInvite: (() => void) | null }
