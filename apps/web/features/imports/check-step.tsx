'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { matchDefinition } from '@almanac/service-rules/import/match-keys'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { showWhole } from '@almanac/units/format-number'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { plural } from './import-words.tsx'
import { ListRight } from './list-right.tsx'
import { MissingColumns } from './missing-columns.tsx'
import { ProblemSection } from './problem-section.tsx'
import { RowsTable } from './rows-table.tsx'
import { SuppliesPart } from './supplies-part.tsx'

/** Step 2: what would happen, before anything is written. */
export function CheckStep({ batch, onBack }: { batch: ImportBatchPage; onBack: () => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const apply = useCommand(api.imports.apply.mutationOptions())
  const [suppliesOpen, setSuppliesOpen] = useState(false)
  const { counts } = batch
  if (!counts) return null
  const goesIn = counts.created + counts.updated + counts.unchanged
  const facts = [
    {
      name: 'New',
      value: showWhole(counts.created, display),
      from: `${plural(counts.customers, 'customer', 'customers', display)}, ${plural(counts.sites, 'site', 'sites', display)}, ${plural(counts.softeners, 'softener', 'softeners', display)}`,
    },
    { name: 'Updated', value: showWhole(counts.updated, display), from: 'what you edited since the last import stays' },
    { name: 'Unchanged', value: showWhole(counts.unchanged, display), from: 'already on record' },
    { name: 'Left out', value: showWhole(counts.problem, display), from: counts.problem > 0 ? 'listed below with the reason' : 'none' },
  ]
  return (
    <>
      <MissingColumns columns={batch.columns} />
      <ListRight key={batch.version} batch={batch} />
      <SuppliesPart key={`supplies ${batch.version}`} batch={batch} onOpen={setSuppliesOpen} />
      <Section title="What will happen to the rows">
        <div className="max-w-3xl">
          <DefinitionList facts={facts} />
        </div>
        {apply.error ? <Problem happened={readFailure(apply.error).message} /> : null}
        <div className="mt-5 flex flex-wrap items-center gap-3">
          <Button
            kind="ink"
            busy={apply.isPending}
            busyLabel="Starting the import"
            disabled={goesIn === 0 || suppliesOpen}
            onClick={() => apply.send({ batchId: batch.id, version: batch.version })}
          >
            {goesIn === 0 ? 'No rows to import' : `Import ${plural(goesIn, 'row', 'rows', display)}`}
          </Button>
          <Button onClick={onBack}>Back to the columns</Button>
          <span className="text-small text-soft">
            {suppliesOpen
              ? 'You chose other supplies above: use them first.'
              : 'Nothing changes before you press this, and you can undo all of it later.'}
          </span>
        </div>
      </Section>
      <Section title="The first rows, as we read them">
        <RowsTable batchId={batch.id} only="all" first={8} />
      </Section>
      <ProblemSection batchId={batch.id} counts={counts} />
      <Section title="What counts as the same">
        <DefinitionList facts={matchDefinition.map(({ thing, sentence }) => ({ name: thing, value: sentence }))} />
      </Section>
    </>
  )
}
