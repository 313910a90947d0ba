'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, useState } from 'react'
import { useOwnAccount } from '@/client/own-account'
import { useFields } from '@/client/use-fields'

const EMPTY = { currentPassword: '', newPassword: '' }

/** Changes one's own password; every other device is signed out. */
export function OwnPassword() {
  const words = useWords('ownAccount')
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
    <Section title={words('password')}>
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        <TextInput label={words('present')} type="password" required autoComplete="current-password" {...field('currentPassword')} />
        <TextInput
          label={words('newPassword')}
          type="password"
          hint={words('passwordHint')}
          required
          minLength={10}
          maxLength={128}
          autoComplete="new-password"
          {...field('newPassword')}
        />
        {problem ? <Problem happened={problem} /> : null}
        {done ? <Notice kind="done">{words('passwordChanged')}</Notice> : null}
        <div>
          <Button type="submit" busy={busy}>
            {words('changePassword')}
          </Button>
        </div>
      </form>
    </Section>
  )
}
