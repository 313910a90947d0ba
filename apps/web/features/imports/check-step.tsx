'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { matchDefinition } from '@almanac/service-rules/import/match-keys'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { count, plural } from './import-words.tsx'
import { ProblemSection } from './problem-section.tsx'
import { RowsTable } from './rows-table.tsx'

/** Step 2: what would happen, before anything is written. */
export function CheckStep({ batch, onBack }: { batch: ImportBatchPage; onBack: () => void }) {
  const { api } = useSession()
  const apply = useCommand(api.imports.apply.mutationOptions())
  const { counts } = batch
  if (!counts) return null
  const goesIn = counts.created + counts.updated + counts.unchanged
  const facts = [
    {
      name: 'New',
      value: count(counts.created),
      from: `${plural(counts.customers, 'customer', 'customers')}, ${plural(counts.sites, 'site', 'sites')}, ${plural(counts.softeners, 'softener', 'softeners')}`,
    },
    { name: 'Updated', value: count(counts.updated), from: 'what you edited since the last import stays' },
    { name: 'Unchanged', value: count(counts.unchanged), from: 'known already, word for word' },
    { name: 'To mend', value: count(counts.problem), from: counts.problem > 0 ? 'left out until mended' : 'none' },
  ]
  return (
    <>
      <Section title="What will happen to the rows">
        <div className="max-w-3xl">
          <DefinitionList facts={facts} />
        </div>
        {apply.error ? <Problem happened={readFailure(apply.error).message} /> : null}
        <div className="mt-5 flex flex-wrap items-center gap-3">
          <Button
            kind="ink"
            busy={apply.isPending}
            busyLabel="Handing over"
            disabled={goesIn === 0}
            onClick={() => apply.send({ batchId: batch.id, version: batch.version })}
          >
            {goesIn === 0 ? 'No row to write' : `Write ${plural(goesIn, 'row', 'rows')}`}
          </Button>
          <Button onClick={onBack}>Back to the columns</Button>
          <span className="text-small text-soft">Nothing is written before you press this; all of it can be undone afterwards.</span>
        </div>
      </Section>
      <Section title="The first rows, as they are understood">
        <RowsTable batchId={batch.id} only="all" first={8} />
      </Section>
      <ProblemSection batchId={batch.id} problems={counts.problem} noted={counts.noted} />
      <Section title="What counts as the same">
        <DefinitionList facts={matchDefinition.map(({ thing, sentence }) => ({ name: thing, value: sentence }))} />
      </Section>
    </>
  )
}
