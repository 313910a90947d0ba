'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import type { FormEvent } from 'react'
import { NewPasswordField } from '@/client/new-sign-in-fields'
import { LinkRefused, PublicPage } from '@/client/public-page'
import { useSendOnce } from '@/client/send-once'
import { useFields } from '@/client/use-fields'

/** Where someone with a link for it sets a new password. */
export function NewPassword({ page }: { page: { token: string } | { refused: string } }) {
  return 'refused' in page ? <LinkRefused refused={page.refused} /> : <PasswordForm token={page.token} />
}

function PasswordForm({ token }: { token: string }) {
  const words = useWords('join')
  const { values, field } = useFields(() => ({ password: '' }))
  const { send, problem, busy } = useSendOnce(`/api/new-password/${token}`)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    void send(values)
  }
  return (
    <PublicPage title={words('setPassword')} lead={words('othersEnd')}>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <NewPasswordField label={words('newPassword')} {...field('password')} />
        {problem ? <Problem happened={problem} /> : null}
        <div>
          <Button kind="ink" type="submit" busy={busy} busyLabel={words('saving')}>
            {words('savePassword')}
          </Button>
        </div>
      </form>
    </PublicPage>
  )
}
