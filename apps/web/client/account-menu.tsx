'use client'
import { TextLink } from '@almanac/ui/text-link'
import { useMutation } from '@tanstack/react-query'
import Link from 'next/link'
import { useSession } from './providers.tsx'

/** Signs this session out and leaves nothing of the company on the page. */
async function signOut(): Promise<void> {
  await fetch('/api/auth/sign-out', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' })
  location.assign('/sign-in')
}

/** Who is signed in; another company for those who are in several; sessions and signing out. */
export function AccountMenu() {
  const { me, api } = useSession()
  const others = me.companies.filter((one) => one.id !== me.company.id)
  const change = useMutation(api.session.switchCompany.mutationOptions({ onSuccess: () => location.assign('/') }))
  return (
    <details className="relative">
      <summary className="list-none underline decoration-dotted underline-offset-4">{me.person.name}</summary>
      <div className="absolute right-0 z-20 mt-2 flex w-64 flex-col gap-1 border border-ink bg-sheet p-3 text-ink">
        <p className="text-small text-soft">{me.person.email}</p>
        {others.map((one) => (
          <button
            key={one.id}
            type="button"
            className="min-h-control text-left hover:underline"
            onClick={() => change.mutate({ companyId: one.id })}
          >
            Go to {one.name} <span className="text-small text-soft">as {one.role}</span>
          </button>
        ))}
        {change.error ? <p role="alert">{change.error.message}</p> : null}
        <TextLink href="/sessions" link={Link}>
          Where you are signed in
        </TextLink>
        <button type="button" className="min-h-control text-left hover:underline" onClick={() => void signOut()}>
          Sign out
        </button>
      </div>
    </details>
  )
}
