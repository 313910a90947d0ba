'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { TextInput } from '@almanac/ui/text-input'
import { type FormEvent, useState } from 'react'

const WORDS: Record<number, string> = {
  401: 'Wrong email or password.',
  403: 'This page was opened under another address than the one the server answers to.',
}

/** The way in. */
export function SignIn() {
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)

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
      if (answer.ok) return location.assign('/')
      const said = (await answer.json().catch(() => null)) as { code?: string; message?: string } | null
      // A refusal for now says itself how long to wait.
      const saysItself = said?.code === 'DEMO_ELSEWHERE' || answer.status === 429 || answer.status === 503
      setProblem((saysItself ? said?.message : WORDS[answer.status]) ?? 'The server could not sign you in just now.')
    } catch {
      setProblem('The server could not be reached.')
    }
    setBusy(false)
  }

  return (
    <main className="mx-auto flex min-h-dvh max-w-md flex-col justify-center px-5 py-10">
      <h1 className="text-h1 font-semibold">Rebed Almanac</h1>
      <p className="mt-1 mb-6 text-soft">Every softener the firm looks after, what its water does to it, and when its bed will fail.</p>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <TextInput label="E-mail" name="email" type="email" autoComplete="username" required />
        <TextInput label="Password" name="password" type="password" autoComplete="current-password" required />
        {problem ? <Problem happened={problem} todo="Your e-mail is still in the form: check both and try again." /> : null}
        <Button kind="ink" type="submit" busy={busy} busyLabel="Signing in">
          Sign in
        </Button>
      </form>
    </main>
  )
}
