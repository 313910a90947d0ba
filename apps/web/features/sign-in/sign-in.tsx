'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import type { Key } from '@almanac/words/words'
import { type FormEvent, useState } from 'react'
import { PasskeySignIn } from './passkey-sign-in.tsx'
import { SecondStep } from './second-step.tsx'

const REFUSED: Record<number, Key<'signIn'>> = { 401: 'wrong', 403: 'otherAddress' }

/** Where a link that works once sent its holder to sign in first; nowhere else. */
const THEN = /^\/(join|set-up)\/[\w-]{43}$/

/** Where signing in leads to. */
function whereTo(): string {
  const then = new URLSearchParams(location.search).get('then') ?? ''
  return THEN.test(then) ? then : '/'
}

/** The way in. */
export function SignIn() {
  const words = useWords('signIn')
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const [asksCode, setAsksCode] = useState(false)

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const form = new FormData(event.currentTarget)
    setBusy(true)
    setProblem(undefined)
    try {
      const answer = await fetch('/api/auth/sign-in/email', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ email: form.get('email'), password: form.get('password') }),
      })
      const said = (await answer.json().catch(() => null)) as { code?: string; message?: string; twoFactorRedirect?: boolean } | null
      if (answer.ok && said?.twoFactorRedirect) return setAsksCode(true)
      if (answer.ok) return location.assign(whereTo())
      // A refusal for now says itself how long to wait.
      const saysItself = said?.code === 'DEMO_ELSEWHERE' || answer.status === 429 || answer.status === 503
      setProblem((saysItself ? said?.message : undefined) ?? words(REFUSED[answer.status] ?? 'notNow'))
    } catch {
      setProblem(words('unreachable'))
    }
    setBusy(false)
  }

  if (asksCode) return <SecondStep onDone={() => location.assign(whereTo())} />
  return (
    <main className="mx-auto flex min-h-dvh max-w-md flex-col justify-center px-5 py-10">
      <h1 className="text-h1 font-semibold">Rebed Almanac</h1>
      <p className="mt-1 mb-6 text-soft">{words('lead')}</p>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <TextInput label={words('email')} name="email" type="email" autoComplete="username" required />
        <TextInput label={words('password')} name="password" type="password" autoComplete="current-password" required />
        {problem ? <Problem happened={problem} todo={words('kept')} /> : null}
        <Button kind="ink" type="submit" busy={busy} busyLabel={words('signingIn')}>
          {words('signIn')}
        </Button>
        <PasskeySignIn onDone={() => location.assign(whereTo())} />
        <a href="/forgot-password" className="self-start underline underline-offset-4">
          {words('forgotten')}
        </a>
      </form>
    </main>
  )
}
