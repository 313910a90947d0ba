'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { useMutation } from '@tanstack/react-query'
import type { FormEvent } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useFields } from '@/client/use-fields'

/** Changes the email that one signs in with. */
export function OwnEmail() {
  const { api, me } = useSession()
  const { values, field } = useFields(() => ({ email: '', password: '' }))
  const words = useWords('ownAccount')
  const change = useMutation(api.session.changeEmail.mutationOptions())
  const submit = (event: FormEvent) => {
    event.preventDefault()
    change.mutate(values)
  }
  return (
    <Section title={words('email')}>
      <p className="mb-3">{words('emailLead', { email: me.person.email })}</p>
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        <TextInput label={words('newEmail')} type="email" required maxLength={254} autoComplete="email" {...field('email')} />
        <TextInput label={words('passwordToChange')} type="password" required autoComplete="current-password" {...field('password')} />
        {change.error ? <Problem happened={readFailure(change.error).message} /> : null}
        {change.data ? (
          <Notice kind="done">
            {change.data.sentTo ? words('emailSent', { email: change.data.sentTo }) : words('emailChanged', { email: values.email })}
          </Notice>
        ) : null}
        <div>
          <Button type="submit" busy={change.isPending}>
            {words('changeEmail')}
          </Button>
        </div>
      </form>
    </Section>
  )
}
