'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, useState } from 'react'
import { PublicPage, ToSignIn } from '@/client/public-page'
import { useFields } from '@/client/use-fields'

const KEYS = {
  password: { title: 'forgotten', lead: 'forgottenLead', none: 'forgottenNoMail', sent: 'forgottenSent' },
  'set-up': { title: 'found', lead: 'foundLead', none: 'foundNoMail', sent: 'foundSent' },
} as const

/** Asks for a link by mail: for a forgotten password, or to found a company. `may`: whether this server sends such mails. */
export function AskByMail({ purpose, may }: { purpose: keyof typeof KEYS; may: boolean }) {
  const words = useWords('join')
  const keys = KEYS[purpose]
  const { values, field } = useFields(() => ({ email: '' }))
  const [state, setState] = useState<'asking' | 'busy' | 'sent'>('asking')
  const [problem, setProblem] = useState<string>()
  async function submit(event: FormEvent) {
    event.preventDefault()
    setState('busy')
    setProblem(undefined)
    try {
      const answer = await fetch('/api/mail-link', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ purpose, email: values.email }),
      })
      if (answer.ok) return setState('sent')
      setProblem(((await answer.json()) as { message?: string }).message)
    } catch {
      setProblem(words('unreachable'))
    }
    setState('asking')
  }
  if (!may)
    return (
      <PublicPage title={words(keys.title)} lead={words(keys.none)}>
        <ToSignIn />
      </PublicPage>
    )
  return (
    <PublicPage title={words(keys.title)} lead={words(keys.lead)}>
      {state === 'sent' ? (
        <Notice kind="done">{words(keys.sent)}</Notice>
      ) : (
        <form onSubmit={submit} className="flex flex-col gap-4">
          <TextInput label={words('email')} type="email" required maxLength={254} autoComplete="username" {...field('email')} />
          {problem ? <Problem happened={problem} /> : null}
          <div>
            <Button kind="ink" type="submit" busy={state === 'busy'}>
              {words('sendLink')}
            </Button>
          </div>
        </form>
      )}
      <div className="mt-5">
        <ToSignIn />
      </div>
    </PublicPage>
  )
}
