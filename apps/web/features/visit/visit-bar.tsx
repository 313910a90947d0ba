'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useState } from 'react'
import { telOf } from '@/client/phone-link'
import { Piece } from '@/client/piece'
import { PANEL } from './late-pieces.ts'
import type { DraftHandle } from './use-draft.ts'
import type { PanelPart } from './visit-panel.tsx'

const ENTRY =
  'flex min-h-14 min-w-12 flex-auto items-center justify-center border-l border-line px-1 text-center first:border-l-0 hover:bg-wash max-sm:text-small'

type Props = {
  visit: VisitPage
  procedure: Procedure
  handle: DraftHandle
  /** An answer ended the work: there is no step to go to until it is taken back. */
  stopped: boolean
}

/** At the foot of each step: all steps, what to know of the place, the kit, the valve's settings, a call, a note. One touch each, and another goes back to the step. */
export function VisitBar({ visit, procedure, handle, stopped }: Props) {
  const words = useWords('visit')
  const [open, setOpen] = useState<PanelPart | null>(null)
  const phones = visit.contacts.flatMap(({ phone }) => (phone ? [phone] : []))
  const [phone, ...others] = phones
  const entry = (part: PanelPart, label: ReactNode) => (
    <button type="button" className={ENTRY} onClick={() => setOpen(part)}>
      {label}
    </button>
  )
  return (
    <>
      {/* What scrolls ends above the bar. */}
      <div aria-hidden="true" className="h-20" />
      <nav aria-label={words('bar')} className="fixed inset-x-0 bottom-0 z-10 border-t border-ink bg-paper print:hidden">
        <div className="mx-auto flex max-w-[860px]">
          {stopped ? null : entry('steps', words('steps'))}
          {entry('brief', words('brief'))}
          {visit.kind === 'rebed' && visit.bed ? entry('kit', words('kit')) : null}
          {visit.settings ? entry('settings', words('settings')) : null}
          {phone && others.length === 0 ? (
            <a className={ENTRY} href={telOf(phone)}>
              {words('callShort')}
            </a>
          ) : phone ? (
            entry('brief', words('callShort'))
          ) : null}
          {entry('note', words('note'))}
        </div>
      </nav>
      {open ? <Piece of={PANEL} give={{ part: open, visit, procedure, handle, onClose: () => setOpen(null) }} meanwhile={null} /> : null}
    </>
  )
}
