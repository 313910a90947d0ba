import type { ReportReader as Row } from '@almanac/contract/reports'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { formatInstant } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'

type Props = { reader: Row; busy: boolean; onSend: () => void }

/** One contact: what became of the report to them, and a button or why it can’t go. */
export function ReportReader({ reader, busy, onSend }: Props) {
  const display = useDisplay()
  const words = useWords('sendReport')
  const roles = useWords('contactRole')
  const { name, role, email, refusal, last } = reader
  return (
    <li className="border-b border-line py-3">
      <p className="wrap-anywhere">{[name, roles(role).toLowerCase(), email].filter(Boolean).join(', ')}</p>
      {last ? (
        <p className="mt-1 flex flex-wrap items-center gap-x-4 gap-y-2">
          {words(`state/${last.state}`, { at: formatInstant(last.at, display), address: last.address })}
          {last.kept ? (
            <LinkButton href={`/api/messages/${last.messageId}/report`} file>
              {words('asSent')}
            </LinkButton>
          ) : null}
        </p>
      ) : null}
      {refusal ? (
        <p className="mt-1 text-soft">{words(`why/${refusal}`, { email: email ?? '' })}</p>
      ) : (
        <p className="mt-2">
          <Button kind="ink" busy={busy} onClick={onSend}>
            {words('to', { name: name ?? roles(role).toLowerCase() })}
          </Button>
        </p>
      )}
    </li>
  )
}
