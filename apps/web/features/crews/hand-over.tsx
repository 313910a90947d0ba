'use client'
import type { ShownOnce } from '@almanac/contract/people'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Notice } from '@almanac/ui/notice'
import { TextInput } from '@almanac/ui/text-input'
import { formatInstant } from '@almanac/units/format-clock'
import { useState } from 'react'
import { useSession } from '@/client/providers'

type Props = { made: ShownOnce; title: string; what: string; onClose: () => void }

/** A link that works once, shown this once: it is kept nowhere. */
export function HandOver({ made, title, what, onClose }: Props) {
  const { me } = useSession()
  const [copied, setCopied] = useState(false)
  const url = made.path ? `${location.origin}${made.path}` : ''
  const until = formatInstant(made.expiresAt, me.company)
  const copy = async () => {
    await navigator.clipboard.writeText(url)
    setCopied(true)
  }
  return (
    <Dialog
      open
      onClose={onClose}
      title={title}
      place="margin"
      actions={
        <>
          {url ? <Button onClick={() => void copy()}>{copied ? 'Copied' : 'Copy the link'}</Button> : null}
          <Button kind="ink" onClick={onClose}>
            Finish
          </Button>
        </>
      }
    >
      {made.sentTo ? (
        <Notice kind="done">
          Sent to {made.sentTo}. The link works once, until {until}.
        </Notice>
      ) : (
        <>
          {made.mailFailed ? <Notice kind="mind">The mail server did not take the message. Hand the link over instead.</Notice> : null}
          <p className="mb-4">
            Whoever opens this link {what}. It works once, until {until}, and is shown only now.
          </p>
          <TextInput label="Link" readOnly value={url} onFocus={(event) => event.target.select()} />
        </>
      )}
    </Dialog>
  )
}
