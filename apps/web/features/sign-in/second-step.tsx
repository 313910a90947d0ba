'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, useState } from 'react'

/** The second step of a sign-in: the code of an app, or a spare one. */
export function SecondStep({ onDone }: { onDone: () => void }) {
  const words = useWords('signIn')
  const [code, setCode] = useState('')
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  async function submit(event: FormEvent) {
    event.preventDefault()
    setBusy(true)
    setProblem(undefined)
    try {
      const path = /^\d{6}$/.test(code.replaceAll(/\s/g, '')) ? 'verify-totp' : 'verify-backup-code'
      const answer = await fetch(`/api/auth/two-factor/${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ code }),
      })
      if (answer.ok) return onDone()
      const said = (await answer.json().catch(() => null)) as { message?: string } | null
      setProblem((answer.status === 429 ? said?.message : undefined) ?? words('wrongCode'))
    } catch {
      setProblem(words('unreachable'))
    }
    setBusy(false)
  }
  return (
    <main className="mx-auto flex min-h-dvh max-w-md flex-col justify-center px-5 py-10">
      <h1 className="text-h1 font-semibold">Rebed Almanac</h1>
      <p className="mt-1 mb-6 text-soft">{words('codeLead')}</p>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <TextInput
          label={words('code')}
          hint={words('codeHint')}
          required
          maxLength={40}
          autoComplete="one-time-code"
          value={code}
          onChange={(event) => setCode(event.target.value)}
        />
        {problem ? <Problem happened={problem} /> : null}
        <Button kind="ink" type="submit" busy={busy} busyLabel={words('signingIn')}>
          {words('signIn')}
        </Button>
      </form>
    </main>
  )
}
