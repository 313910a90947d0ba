'use client'
import { identifyTank } from '@almanac/softener/identify/identify-tank'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useMemo, useState } from 'react'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { AnswerBar } from './answer-bar.tsx'
import { Candidates } from './candidates.tsx'
import { ClueFields } from './clue-fields.tsx'
import { readClues } from './clue-texts.ts'
import { HowSure } from './how-sure.tsx'
import { useClueTexts } from './use-clue-texts.ts'
import { WriteSize } from './write-size.tsx'

/** At first so many candidates are shown; the rest on request. */
const FIRST = 4

/** Which tank is it? For a telephone in one hand, while somebody holds the tape: the answer follows as one types. */
export function WhichTank() {
  const firm = useRebedFirm()
  const words = useWords('whichTank')
  const { me } = useSession()
  const display = me.company
  const bedId = useSearchParams().get('bedId')
  const [texts, change] = useClueTexts(display.unitSystem === 'us' ? 'in' : 'cm')
  const [all, setAll] = useState(false)
  const read = useMemo(() => readClues(texts, { display, words }), [texts, display, words])
  const clues = useDeferredValue(read.clues)
  const found = useMemo(() => identifyTank({ clues, ...firm, tank: words }), [clues, firm, words])
  if (!found.ok) return <Notice kind="mind">{found.reason}</Notice>
  const identity = found.value
  const known = identity.usedClues.length > 0
  const fromLabel = identity.usedClues.every((clue) => /^(written|nominal|resin)/.test(clue))
  const focus = (field: string) => {
    const target = document.getElementById(field)
    target?.closest('details')?.setAttribute('open', '')
    target?.focus()
    target?.scrollIntoView({ block: 'center' })
  }
  return (
    <div className="field mx-auto max-w-[640px] bg-paper">
      <PageHead title={words('title')} lead={words('lead')} />
      <AnswerBar identity={identity} known={known} onAsk={focus} />
      <ClueFields texts={texts} read={read} identity={identity} change={change} />
      <Section title={words(known ? 'mayBe' : 'mayBeBefore')}>
        <HowSure found={found} clues={clues} />
        <Candidates identity={identity} most={all ? 99 : FIRST} />
        {identity.candidates.length > FIRST && !all ? (
          <div className="mt-3">
            <Button onClick={() => setAll(true)}>{words('showAll', { count: String(identity.candidates.length) })}</Button>
          </div>
        ) : null}
      </Section>
      {bedId ? <WriteSize bedId={bedId} best={known ? (identity.candidates[0] ?? null) : null} fromLabel={fromLabel} /> : null}
    </div>
  )
}
