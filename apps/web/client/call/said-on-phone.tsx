'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { useState } from 'react'
import { readFailure } from '../failure.ts'
import { usePermission, useSession } from '../providers.tsx'
import { useCommand } from '../use-command.ts'
import { CallForm } from './call-form.tsx'

type Props = { siteId: string; softenerId: string; label: string }

/** What a customer says of their softener on the telephone: that it still works is one press, hard water opens the call with a visit offered. Both are kept as calls. */
export function SaidOnPhone({ siteId, softenerId, label }: Props) {
  const { api } = useSession()
  const may = usePermission('record:call')
  const showToast = useToast()
  const [hard, setHard] = useState(false)
  const fine = useCommand(api.calls.record.mutationOptions(), {
    onDone: () => showToast({ text: 'Call kept: still fine today.' }),
  })
  if (!may) return null
  const send = () =>
    fine.send({
      ...{ siteId, softenerId, callerName: '', callerPhone: '', sees: null, words: '', advised: '' },
      ...{ stillSoft: true, hardSinceDay: null },
      follows: { what: 'nothing' },
    })
  return (
    <div className="mt-3 print:hidden">
      <p className="text-small text-soft">Said on the phone</p>
      <div className="mt-1 flex flex-wrap gap-3">
        <Button busy={fine.isPending} busyLabel="Saving" onClick={send} aria-label={`Still fine today: ${label}`}>
          Still fine today
        </Button>
        <Button onClick={() => setHard(true)} aria-label={`Hard water: ${label}`}>
          Hard water
        </Button>
      </div>
      {fine.error ? <Problem happened={readFailure(fine.error).message} /> : null}
      {hard ? <CallForm startSiteId={siteId} hardAt={{ softenerId }} onClose={() => setHard(false)} /> : null}
    </div>
  )
}
