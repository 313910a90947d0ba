'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { useMutation } from '@tanstack/react-query'
import type { FormEvent } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useFields } from '@/client/use-fields'

/** Changes the email that one signs in with. */
export function OwnEmail() {
  const { api, me } = useSession()
  const { values, field } = useFields(() => ({ email: '', password: '' }))
  const change = useMutation(api.session.changeEmail.mutationOptions())
  const submit = (event: FormEvent) => {
    event.preventDefault()
    change.mutate(values)
  }
  return (
    <Section title="Email">
      <p className="mb-3">You sign in with {me.person.email}.</p>
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        <TextInput label="New email" type="email" required maxLength={254} autoComplete="email" {...field('email')} />
        <TextInput label="Password, to change it" type="password" required autoComplete="current-password" {...field('password')} />
        {change.error ? <Problem happened={readFailure(change.error).message} /> : null}
        {change.data ? (
          <Notice kind="done">
            {change.data.sentTo
              ? `A link is on its way to ${change.data.sentTo}. Open it there; until then the old email counts.`
              : `Email changed. From now on you sign in with ${values.email}.`}
          </Notice>
        ) : null}
        <div>
          <Button type="submit" busy={change.isPending}>
            Change email
          </Button>
        </div>
      </form>
    </Section>
  )
}
