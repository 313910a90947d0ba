'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import { LinkRefused, PublicPage } from '@/client/public-page'
import { useSendOnce } from '@/client/send-once'

/** Where somebody confirms the email that they sign in with from now on. A press does it: mail programs open links by themselves. */
export function NewEmail({ page }: { page: { token: string; email: string } | { refused: string } }) {
  return 'refused' in page ? <LinkRefused refused={page.refused} /> : <Confirm {...page} />
}

function Confirm({ token, email }: { token: string; email: string }) {
  const words = useWords('join')
  const { send, problem, busy } = useSendOnce(`/api/new-email/${token}`)
  return (
    <PublicPage title={words('newEmail')} lead={words('newEmailLead', { email })}>
      {problem ? <Problem happened={problem} /> : null}
      <div>
        <Button kind="ink" busy={busy} busyLabel={words('saving')} onClick={() => void send({})}>
          {words('useEmail')}
        </Button>
      </div>
    </PublicPage>
  )
}
