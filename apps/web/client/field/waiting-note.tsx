'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { formatClock } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useField } from './field-home.tsx'

/** "Waiting to send (3)", or nothing where nothing waits. */
export function useWaitingWords(): string {
  const { outbox } = useField()
  const words = useWords('sending')
  const count = outbox?.waiting.length ?? 0
  return count > 0 ? words('waiting', { count: String(count) }) : ''
}

/** What waits to be sent and what holds it up, with what to do; what the office could not take in. Nothing where all was sent and taken. */
export function WaitingNote() {
  const { outbox, sending, keeps, sendNow, heard } = useField()
  const words = useWords('sending')
  if (!keeps) return <Notice kind="mind">{words('cannotKeep')}</Notice>
  if (!outbox) return null
  const { waiting, halt, tries, told, stuck } = outbox
  const count = waiting.length
  const again = (
    <Button onClick={sendNow} busy={sending}>
      {words('sendNow')}
    </Button>
  )
  return (
    <>
      {count > 0 && halt === 'sign-in' ? (
        <Notice kind="mind" action={<LinkButton href="/sign-in">{words('toSignIn')}</LinkButton>}>
          {words('signIn', { count })}
        </Notice>
      ) : null}
      {count > 0 && halt === 'no-access' ? <Notice kind="mind">{words('noAccess', { count })}</Notice> : null}
      {count > 0 && halt === 'other-company' ? <Notice kind="mind">{words('otherCompany', { count })}</Notice> : null}
      {count > 0 && halt === 'other-person' ? (
        <Notice kind="mind" action={<LinkButton href="/sign-in">{words('toSignIn')}</LinkButton>}>
          {words('otherPerson', { count })}
        </Notice>
      ) : null}
      {count > 0 && !halt ? (
        <Notice action={tries > 0 ? again : undefined}>{words(tries > 0 ? 'noSignal' : 'sendingNow', { count })}</Notice>
      ) : null}
      {told.map(({ commandId, siteLabel, reason }) => (
        <Notice key={commandId} kind="mind" action={<Button onClick={() => heard(commandId)}>{words('heard')}</Button>}>
          {words('told', { site: siteLabel, reason })}
        </Notice>
      ))}
      {stuck.length > 0 ? <Notice kind="mind">{words('stuck', { count: stuck.length })}</Notice> : null}
    </>
  )
}

/** From when what is shown is, where the server could not be asked. */
export function KeptNote({ at }: { at: string | null }) {
  const display = useDisplay()
  const words = useWords('sending')
  return at === null ? null : <p className="text-small text-soft">{words('asOf', { time: formatClock(at, display) })}</p>
}
