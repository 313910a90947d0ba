import type { ImportBatchPage, ImportSupply, ImportSupplyChoice } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { sharedSupplies } from '@/client/shared-supplies'
import { useCommand } from '@/client/use-command'
import { choiceOf } from './choice-of.ts'

const choiceKey = (choice: ImportSupplyChoice) => (choice.to === 'supply' ? choice.waterSupplyId : choice.to)
const choiceFrom = (value: string): ImportSupplyChoice =>
  value === 'named' || value === 'own-wells' ? { to: value } : { to: 'supply', waterSupplyId: value }

function reasonOf({ from, choice }: ImportSupply, isChanged: boolean): string {
  if (isChanged) return 'Not used yet: press “Use these supplies”.'
  if (from === 'chosen') return 'Chosen by you.'
  if (from === 'earlier') return 'As you chose it for an earlier list.'
  return choice.to === 'own-wells' ? 'It names a well, and no two homes share one.' : 'By its name.'
}

/** What the names of supplies in the list mean: one on record, a new one, or a well for each home. `onOpen`: whether something is chosen and not used yet. */
export function SuppliesPart({ batch, onOpen }: { batch: ImportBatchPage; onOpen: (isOpen: boolean) => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const [changed, setChanged] = useState<Record<string, ImportSupplyChoice>>({})
  const onRecord = useQuery({ ...api.sites.supplies.queryOptions(), enabled: batch.supplies.length > 0 })
  const check = useCommand(api.imports.check.mutationOptions())
  const isOpen = Object.keys(changed).length > 0
  // What was chosen and not used yet would be lost by importing.
  useEffect(() => {
    onOpen(isOpen)
    return () => onOpen(false)
  }, [isOpen, onOpen])
  if (batch.supplies.length === 0) return null
  const shared = sharedSupplies(onRecord.data ?? [])
  const choicesFor = ({ name, isOnRecord }: ImportSupply) => [
    { value: 'named', label: isOnRecord ? `${name}, on record` : `A new supply called ${name}` },
    { value: 'own-wells', label: 'Each home’s own well' },
    ...shared
      .filter((one) => !isOnRecord || one.name.toLowerCase() !== name.toLowerCase())
      .map((one) => ({ value: one.id, label: one.name })),
  ]
  const use = () =>
    check.send({
      ...{ batchId: batch.id, version: batch.version, columns: batch.columns.map(choiceOf), listRightOn: batch.listRightOn },
      supplies: Object.entries(changed).map(([name, choice]) => ({ name, choice })),
    })
  return (
    <Section title="Which water these names mean">
      <DataTable
        caption="Supplies the list names"
        rows={batch.supplies}
        rowKey={(one) => one.name}
        columns={[
          { key: 'name', head: 'In the list', phone: 'title', cell: (one) => <span className="font-semibold">{one.name}</span> },
          { key: 'rows', head: 'Rows', align: 'right', cell: (one) => showWhole(one.rows, display) },
          {
            key: 'choice',
            head: 'Means',
            width: '40%',
            cell: (one) => (
              <Select
                label={`What ${one.name} means`}
                hideLabel
                value={choiceKey(changed[one.name] ?? one.choice)}
                choices={choicesFor(one)}
                onChange={(event) => setChanged({ ...changed, [one.name]: choiceFrom(event.target.value) })}
              />
            ),
          },
          { key: 'why', head: 'Why', cell: (one) => <span className="text-small">{reasonOf(one, one.name in changed)}</span> },
        ]}
      />
      {check.error ? <Problem happened={readFailure(check.error).message} kept="The rows are still checked as before." /> : null}
      <div className="mt-4 flex flex-wrap items-center gap-4">
        <Button disabled={!isOpen} busy={check.isPending} busyLabel="Checking the rows" onClick={use}>
          Use these supplies
        </Button>
        <span className="text-small text-soft">We’ll remember this for your next list.</span>
      </div>
    </Section>
  )
}
