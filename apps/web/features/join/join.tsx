'use client'
import type { Role } from '@almanac/records/role'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import type { FormEvent } from 'react'
import { NewSignInFields } from '@/client/new-sign-in-fields'
import { LinkRefused, PublicPage } from '@/client/public-page'
import { useSendOnce } from '@/client/send-once'
import { useFields } from '@/client/use-fields'

type Invited = {
  token: string
  company: string
  role: Role
  name: string
  email: string | null
  signedIn: { name: string; email: string } | null
}

/** Where an invited person joins: whoever is signed in by one press, someone new with a password of their own. */
export function JoinByLink({ page }: { page: Invited | { refused: string } }) {
  return 'refused' in page ? <LinkRefused refused={page.refused} /> : <JoinForm page={page} />
}

function JoinForm({ page: { token, company, role, name, email, signedIn } }: { page: Invited }) {
  const words = useWords('join')
  const form = useFields(() => ({ name, email: email ?? '', password: '' }))
  const { send, problem, busy } = useSendOnce(`/api/join/${token}`)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    void send({ person: signedIn ? null : form.values })
  }
  return (
    <PublicPage title={words('join', { company })} lead={words('invited', { role })}>
      <form onSubmit={submit} className="flex flex-col gap-4">
        {signedIn ? <p>{words('signedInAs', { ...signedIn, company })}</p> : <NewSignInFields form={form} fixedEmail={email !== null} />}
        {problem ? <Problem happened={problem} /> : null}
        <div>
          <Button kind="ink" type="submit" busy={busy} busyLabel={words('joining')}>
            {words('join', { company })}
          </Button>
        </div>
        {signedIn ? null : (
          <p className="text-soft">
            {words('haveOne')}{' '}
            <a href={`/sign-in?then=/join/${token}`} className="underline underline-offset-4">
              {words('signInFirst')}
            </a>
          </p>
        )}
      </form>
    </PublicPage>
  )
}
