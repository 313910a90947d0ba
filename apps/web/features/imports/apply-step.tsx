'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { ProgressLine } from '@almanac/ui/progress-line'
import { Section } from '@almanac/ui/section'
import { showWhole } from '@almanac/units/format-number'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useQuiet } from './use-quiet.ts'

/** Step 3: the writing, which goes on without this page. */
export function ApplyStep({ batch }: { batch: ImportBatchPage }) {
  const display = useDisplay()
  const { api } = useSession()
  const again = useCommand(api.imports.apply.mutationOptions())
  const { doneRows, totalRows, state } = batch
  const quiet = useQuiet(`${state} ${doneRows}`)
  return (
    <Section title={state === 'queued' ? 'Waiting for its turn' : 'Importing the rows'}>
      <ProgressLine
        label={state === 'queued' ? 'Waiting' : 'Writing'}
        value={state === 'queued' ? undefined : doneRows}
        max={totalRows}
        detail={`${showWhole(doneRows, display)} of ${showWhole(totalRows, display)} rows`}
      />
      <p className="max-w-[70ch] text-soft">
        You can leave this page: the import goes on, and the result appears here. All rows go in or none do, so nothing is left half done.
      </p>
      {quiet ? (
        <Notice
          kind="mind"
          action={
            <Button busy={again.isPending} onClick={() => again.send({ batchId: batch.id, version: batch.version })}>
              Retry
            </Button>
          }
        >
          No progress for a while. If the background worker stopped, the import restarts automatically within half a minute. You can also
          press Retry: the rows go in only once.
        </Notice>
      ) : null}
      {again.error ? <Problem happened={readFailure(again.error).message} /> : null}
    </Section>
  )
}
