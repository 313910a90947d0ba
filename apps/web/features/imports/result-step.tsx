'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { showWhole } from '@almanac/units/format-number'
import Link from 'next/link'
import { useState } from 'react'
import { countWords, plural } from './import-words.tsx'
import { ProblemSection } from './problem-section.tsx'
import { KeptReasons, UndoImport } from './undo-import.tsx'

/** Step 4: what was written, the rows to look at, and the way back. */
export function ResultStep({ batch }: { batch: ImportBatchPage }) {
  const display = useDisplay()
  const [asking, setAsking] = useState(false)
  const { counts } = batch
  return (
    <>
      {batch.undone ? <Undone undone={batch.undone} /> : null}
      {batch.gone ? <Gone gone={batch.gone} /> : null}
      {batch.state === 'applied' && counts ? (
        <Section title="Imported">
          <Notice kind="done">
            {countWords(counts, display)}. {plural(counts.sites, 'site', 'sites', display)} and{' '}
            {plural(counts.softeners, 'softener', 'softeners', display)} are new; their beds are being forecast.
          </Notice>
          <div className="mt-4 flex flex-wrap gap-3">
            <LinkButton href="/sites" kind="ink" link={Link}>
              See the sites
            </LinkButton>
            <LinkButton href="/coming-due" link={Link}>
              See what comes due
            </LinkButton>
            <Button kind="danger" onClick={() => setAsking(true)}>
              Undo this import
            </Button>
          </div>
        </Section>
      ) : null}
      {counts ? <ProblemSection batchId={batch.id} counts={counts} /> : null}
      {asking ? <UndoImport batch={batch} onClose={() => setAsking(false)} /> : null}
    </>
  )
}

function Gone({ gone: { rows, fileName } }: { gone: NonNullable<ImportBatchPage['gone']> }) {
  const display = useDisplay()
  return (
    <Section title="Archived with another import">
      <p className="max-w-[70ch]">
        {plural(rows, 'row is', 'rows are', display)} no longer on record: undoing {fileName} archived {rows === 1 ? 'it' : 'them'}. Import
        this file again to bring {rows === 1 ? 'it' : 'them'} back.
      </p>
    </Section>
  )
}

function Undone({ undone }: { undone: NonNullable<ImportBatchPage['undone']> }) {
  const display = useDisplay()
  const { archived, restored, kept, keptExamples } = undone
  return (
    <Section title="Undone">
      <p className="max-w-[70ch]">
        {showWhole(archived, display)} customers, sites and softeners were archived, and{' '}
        {plural(restored, 'value was', 'values were', display)} restored.{' '}
        {kept === 0 ? 'Nothing from it remains.' : `${showWhole(kept, display)} stay:`}
      </p>
      <KeptReasons examples={keptExamples} />
    </Section>
  )
}
