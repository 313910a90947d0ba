'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { type FormEvent, useState } from 'react'
import { useOwnAccount } from '@/client/own-account'
import { useFields } from '@/client/use-fields'

const EMPTY = { currentPassword: '', newPassword: '' }

/** Changes one's own password; every other device is signed out. */
export function OwnPassword() {
  const { values, set, field } = useFields(() => EMPTY)
  const { send, problem, busy } = useOwnAccount()
  const [done, setDone] = useState(false)
  async function submit(event: FormEvent) {
    event.preventDefault()
    if (!(await send('change-password', values))) return
    set(EMPTY)
    setDone(true)
  }
  return (
    <Section title="Password">
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        <TextInput label="Present password" type="password" required autoComplete="current-password" {...field('currentPassword')} />
        <TextInput
          label="New password"
          type="password"
          hint="At least 10 characters; three or four unrelated words are best"
          required
          minLength={10}
          maxLength={128}
          autoComplete="new-password"
          {...field('newPassword')}
        />
        {problem ? <Problem happened={problem} /> : null}
        {done ? <Notice kind="done">Password changed. Your other devices are signed out.</Notice> : null}
        <div>
          <Button type="submit" busy={busy}>
            Change password
          </Button>
        </div>
      </form>
    </Section>
  )
}
