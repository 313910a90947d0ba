'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Dialog } from '@almanac/ui/dialog'
import { TextArea } from '@almanac/ui/text-area'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useState } from 'react'
import { telOf } from '@/client/phone-link'
import { Piece } from '@/client/piece'
import { useSession } from '@/client/providers'
import { FoundSize } from './found-size.tsx'
import { CARD } from './late-pieces.ts'
import { StepList } from './step-list.tsx'
import type { DraftHandle } from './use-draft.ts'
import { tankOfVisit } from './visit-amounts.ts'
import { VisitFacts } from './visit-facts.tsx'
import { useKitTitle, VisitKit } from './visit-kit.tsx'

const ENTRY =
  'flex min-h-14 min-w-12 flex-auto items-center justify-center border-l border-line px-1 text-center first:border-l-0 hover:bg-wash max-sm:text-small'

type Part = 'steps' | 'brief' | 'kit' | 'settings' | 'note'
type Props = {
  visit: VisitPage
  procedure: Procedure
  handle: DraftHandle
  /** An answer ended the work: there is no step to go to until it is taken back. */
  stopped: boolean
}

/** At the foot of each step: all steps, what to know of the place, the kit, the valve's settings, a call, a note. One touch each, and another goes back to the step. */
export function VisitBar({ visit, procedure, handle, stopped }: Props) {
  const { me } = useSession()
  const words = useWords('visit')
  const closing = useWords('closeOut')
  const kitTitle = useKitTitle(visit)
  const [open, setOpen] = useState<Part | null>(null)
  const close = () => setOpen(null)
  const { draft, change } = handle
  const phones = visit.contacts.flatMap(({ phone }) => (phone ? [phone] : []))
  const [phone, ...others] = phones
  const entry = (part: Part, label: ReactNode) => (
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
      {open === 'steps' ? (
        <StepList
          procedure={procedure}
          draft={draft}
          by={{ locale: me.company.locale, units: me.company.unitSystem, tank: tankOfVisit(visit, me.company) }}
          onClose={close}
          onGo={(step) => {
            close()
            change({ step })
          }}
        />
      ) : null}
      <Dialog open={open === 'brief'} place="margin" onClose={close} title={words('brief')}>
        <VisitFacts visit={visit} />
      </Dialog>
      <Dialog open={open === 'kit'} place="margin" onClose={close} title={kitTitle}>
        <VisitKit visit={visit} />
        <FoundSize handle={handle} />
      </Dialog>
      <Dialog open={open === 'settings'} place="margin" onClose={close} title={words('settings')}>
        <Piece of={CARD} give={{ visit, draft }} />
      </Dialog>
      <Dialog open={open === 'note'} place="margin" onClose={close} title={words('note')}>
        <TextArea label={closing('notes')} value={draft.notes} onChange={(event) => change({ notes: event.target.value })} />
      </Dialog>
    </>
  )
}
