'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Dialog } from '@almanac/ui/dialog'
import { TextArea } from '@almanac/ui/text-area'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { Piece } from '@/client/piece'
import { useSession } from '@/client/providers'
import { FoundSize } from './found-size.tsx'
import { CARD } from './late-card.ts'
import { StepList } from './step-list.tsx'
import type { DraftHandle } from './use-draft.ts'
import { tankOfVisit } from './visit-amounts.ts'
import { VisitFacts } from './visit-facts.tsx'
import { useKitTitle, VisitKit } from './visit-kit.tsx'

export type PanelPart = 'steps' | 'brief' | 'kit' | 'settings' | 'note'
type Props = { part: PanelPart; visit: VisitPage; procedure: Procedure; handle: DraftHandle; onClose: () => void }

/** What the bar opens beside a step. */
export function VisitPanel({ part, visit, procedure, handle, onClose }: Props) {
  const { me } = useSession()
  const words = useWords('visit')
  const closing = useWords('closeOut')
  const kitTitle = useKitTitle(visit)
  const { draft, change } = handle
  const beside = (title: string, content: ReactNode) => (
    <Dialog open place="margin" onClose={onClose} title={title}>
      {content}
    </Dialog>
  )
  if (part === 'brief') return beside(words('brief'), <VisitFacts visit={visit} />)
  if (part === 'settings') return beside(words('settings'), <Piece of={CARD} give={{ visit, draft }} />)
  if (part === 'kit')
    return beside(
      kitTitle,
      <>
        <VisitKit visit={visit} />
        <FoundSize handle={handle} />
      </>,
    )
  if (part === 'note')
    return beside(
      words('note'),
      <TextArea label={closing('notes')} value={draft.notes} onChange={(event) => change({ notes: event.target.value })} />,
    )
  return (
    <StepList
      procedure={procedure}
      draft={draft}
      by={{ locale: me.company.locale, units: me.company.unitSystem, tank: tankOfVisit(visit, me.company) }}
      onClose={onClose}
      onGo={(step) => {
        onClose()
        change({ step })
      }}
    />
  )
}
