'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import type { ImportState } from '@almanac/records/import-state'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { Steps } from '@almanac/ui/steps'
import { TextLink } from '@almanac/ui/text-link'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { ApplyStep } from './apply-step.tsx'
import { BringIn } from './bring-in.tsx'
import { CheckStep } from './check-step.tsx'
import { ColumnsStep } from './columns-step.tsx'
import { DiscardPart } from './discard-part.tsx'
import { ReadAsPart } from './read-as-part.tsx'
import { ReadingStep } from './reading-step.tsx'
import { ResultStep } from './result-step.tsx'

/** A list in these states has no step to take. */
const BEFORE: ReadonlySet<ImportState> = new Set(['reading', 'refused', 'discarded'])
const NAMES = ['Columns', 'Check the rows', 'Write', 'Result'] as const

function stepOf(batch: ImportBatchPage | undefined, back: boolean): number {
  if (!batch) return 1
  if (batch.state === 'applied' || batch.state === 'undone') return 4
  if (batch.state === 'queued' || batch.state === 'applying') return 3
  return batch.checked && !back ? 2 : 1
}

/** One file on its way in: its columns, a check of its rows, the writing, the result. Can be left and taken up again at any step. */
export function ImportWizard({ batchId }: { batchId: string }) {
  const display = useDisplay()
  const { api } = useSession()
  const [back, setBack] = useState(false)
  const query = useQuery(api.imports.batch.queryOptions({ input: { batchId } }))
  const batch = query.data
  const step = stepOf(batch, back)
  return (
    <>
      <PageHead
        title={batch?.fileName ?? 'Import a file'}
        above={
          <TextLink href="/imports" link={Link}>
            Import
          </TextLink>
        }
        lead={batch && batch.totalRows > 0 ? `${showWhole(batch.totalRows, display)} rows. ${batch.sentences.join(' ')}` : undefined}
      />
      {query.error ? <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} /> : null}
      {query.isPending ? <Skeleton lines={8} label="Loading the import" /> : null}
      {batch?.state === 'reading' ? <ReadingStep /> : null}
      {batch?.state === 'refused' ? (
        <>
          <Problem happened={batch.failure ?? 'This file could not be read. Nothing was imported.'} />
          {batch.isKept ? <ReadAsPart batch={batch} /> : null}
          <div className="mt-4 flex flex-wrap items-start gap-3">
            <BringIn label="Choose another file" />
            <DiscardPart batch={batch} />
          </div>
        </>
      ) : null}
      {batch?.state === 'discarded' ? (
        <Empty title="This list was discarded" action={<BringIn />}>
          Nothing of it was imported, and its rows were deleted.
        </Empty>
      ) : null}
      {batch && !BEFORE.has(batch.state) ? (
        <>
          <Steps current={step} total={4} names={NAMES} label="Steps of the import" />
          {batch.state === 'failed' ? <Problem happened={batch.failure ?? 'The import stopped.'} kept="The rows are still here." /> : null}
          {step === 1 && batch.isKept ? <ReadAsPart key={`read ${batch.version}`} batch={batch} /> : null}
          {step === 1 ? <ColumnsStep key={batch.version} batch={batch} onChecked={() => setBack(false)} /> : null}
          {step === 2 ? <CheckStep batch={batch} onBack={() => setBack(true)} /> : null}
          {step === 3 ? <ApplyStep batch={batch} /> : null}
          {step === 4 ? <ResultStep batch={batch} /> : null}
          {step < 3 ? <DiscardPart batch={batch} /> : null}
        </>
      ) : null}
    </>
  )
}
