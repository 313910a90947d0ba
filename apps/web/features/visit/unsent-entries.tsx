'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { Dialog } from '@almanac/ui/dialog'
import { Notice } from '@almanac/ui/notice'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { useField } from '@/client/field/field-home'
import { saidOf } from './step-marks.ts'
import type { DraftHandle } from './use-draft.ts'

/** What was typed on this device for a visit that another one closed out: shown, and sent to the office or thrown away, since it is nowhere else. */
export function UnsentEntries({ visit, procedure, handle }: { visit: VisitPage; procedure: Procedure; handle: DraftHandle }) {
  const { write } = useField()
  const words = useWords('visit')
  const sending = useWords('sending')
  const closing = useWords('closeOut')
  const [asked, setAsked] = useState(false)
  const { draft, clear, written } = handle
  const { visitId, jobId, siteLabel } = visit
  const facts = [
    ...procedure.steps
      .flatMap((step) => step.asks)
      .flatMap((ask) =>
        draft.answers[ask.id]?.text.trim() ? [{ key: ask.id, name: ask.label, value: saidOf(ask, draft) || words('yes') }] : [],
      ),
    ...(draft.notes.trim() ? [{ key: 'notes', name: closing('notes'), value: draft.notes }] : []),
  ]
  const send = async () => {
    await written()
    const entries = Object.fromEntries(facts.map(({ name, value }) => [name, value]))
    if (await write({ kind: 'entries', body: { visitId, entries }, visitId, siteLabel }, jobId)) clear()
  }
  return (
    <>
      <Notice kind="mind">{words('closedElsewhere', { count: facts.length })}</Notice>
      <DefinitionList facts={facts} />
      <div className="flex flex-wrap gap-3 py-4">
        <Button kind="ink" onClick={() => void send()}>
          {words('sendEntries')}
        </Button>
        <Button onClick={() => setAsked(true)}>{sending('leaveThrow')}</Button>
      </div>
      <Dialog
        open={asked}
        onClose={() => setAsked(false)}
        title={words('throwTitle', { count: facts.length })}
        actions={
          <>
            <Button onClick={() => setAsked(false)}>{sending('cancel')}</Button>
            <Button kind="danger" onClick={() => void written().then(handle.throwAway)}>
              {sending('leaveThrow')}
            </Button>
          </>
        }
      >
        <p>{words('throwText')}</p>
      </Dialog>
    </>
  )
}
