import { type Mergeable, mergeables, mergeableWords } from '@almanac/records/merging'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { useToast } from '@almanac/ui/toast'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { type Picked, PickRecord } from './pick-record.tsx'

const MEANS: Record<Mergeable, string> = {
  customer: 'Sites, contacts, calls and imported lines of the second become the first’s. The second leaves every list.',
  site: 'Softeners, tests, jobs, calls and contacts of the second move to the first. The second leaves every list.',
  town: 'Every site in the second town is then in the first.',
  supply: 'Every site on the second supply is then on the first. The first’s water quality counts; where none is on record, the second’s.',
}

/** Makes two that are one on record once: the first is kept. */
export function MergeForm() {
  const { api } = useSession()
  const showToast = useToast()
  const [kind, setKind] = useState<Mergeable>('customer')
  const [kept, setKept] = useState<Picked | null>(null)
  const [gone, setGone] = useState<Picked | null>(null)
  const towns = useQuery({ ...api.merging.townsOfSites.queryOptions(), enabled: kind === 'town' })
  const supplies = useQuery({ ...api.sites.supplies.queryOptions(), enabled: kind === 'supply' })
  const clear = (next: Mergeable) => {
    setKind(next)
    setKept(null)
    setGone(null)
  }
  const onDone = () => {
    clear(kind)
    showToast({ text: 'Merged. You can undo it below.' })
  }
  const customers = useCommand(api.merging.customers.mutationOptions(), { onDone })
  const sites = useCommand(api.merging.sites.mutationOptions(), { onDone })
  const ofTowns = useCommand(api.merging.towns.mutationOptions(), { onDone })
  const ofSupplies = useCommand(api.merging.supplies.mutationOptions(), { onDone })
  const error = ofSupplies.error ?? customers.error ?? sites.error ?? ofTowns.error
  const send = () => {
    if (!kept || !gone) return
    if (kind === 'customer') customers.send({ keptId: kept.id, goneId: gone.id })
    else if (kind === 'site') sites.send({ keptId: kept.id, goneId: gone.id })
    else if (kind === 'supply') ofSupplies.send({ keptId: kept.id, goneId: gone.id })
    else ofTowns.send({ from: gone.id, to: kept.id })
  }
  const choices =
    kind === 'supply'
      ? (supplies.data ?? []).map((one) => ({ value: one.id, label: one.name }))
      : (towns.data ?? []).map((one) => ({ value: one.town, label: `${one.town} (${one.sites})` }))
  const byName = (label: string, picked: Picked | null, pick: (picked: Picked | null) => void) => (
    <Select
      label={label}
      none={kind === 'supply' ? 'choose a supply' : 'choose a town'}
      value={picked?.id ?? ''}
      onChange={(event) => pick(event.target.value ? { id: event.target.value, label: event.target.value } : null)}
      choices={choices}
    />
  )
  return (
    <form
      className="flex max-w-xl flex-col gap-4"
      onSubmit={(event) => {
        event.preventDefault()
        send()
      }}
    >
      <ChoiceGroup
        label="What is on record twice"
        inline
        value={kind}
        onChange={(value) => clear(mergeables.find((one) => one === value) ?? 'customer')}
        choices={mergeables.map((one) => ({ value: one, label: mergeableWords[one] }))}
      />
      {kind === 'town' || kind === 'supply' ? (
        <>
          {byName('Keep', kept, setKept)}
          {byName('Merge into it', gone, setGone)}
        </>
      ) : (
        <>
          <PickRecord key={`${kind} kept`} label="Keep" kind={kind} picked={kept} onPick={setKept} />
          <PickRecord key={`${kind} gone`} label="Merge into it" kind={kind} picked={gone} onPick={setGone} />
        </>
      )}
      <p className="text-soft">{MEANS[kind]}</p>
      {error ? <Problem happened={readFailure(error).message} /> : null}
      <p>
        <Button
          kind="ink"
          type="submit"
          disabled={!kept || !gone || kept.id === gone.id}
          busy={customers.isPending || sites.isPending || ofTowns.isPending || ofSupplies.isPending}
          busyLabel="Merging"
        >
          Merge
        </Button>
      </p>
    </form>
  )
}
