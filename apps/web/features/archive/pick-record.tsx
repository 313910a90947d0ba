import { Button } from '@almanac/ui/button'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useSession } from '@/client/providers'

export type Picked = { id: string; label: string }
type Props = { label: string; kind: 'customer' | 'site'; picked: Picked | null; onPick: (picked: Picked | null) => void }

const SHOWN = 6

/** Chooses a customer or a site by typing a part of its name. */
export function PickRecord({ label, kind, picked, onPick }: Props) {
  const { api } = useSession()
  const [typed, setTyped] = useState('')
  const q = typed.trim()
  const asked = picked === null && q.length >= 3
  const customers = useQuery(api.sites.customers.queryOptions({ input: { q }, enabled: asked && kind === 'customer' }))
  const sites = useQuery(api.sites.list.queryOptions({ input: { q, limit: SHOWN }, enabled: asked && kind === 'site' }))
  if (picked)
    return (
      <p className="flex flex-wrap items-center gap-3">
        <span>
          <span className="text-soft">{label}: </span>
          {picked.label}
        </span>
        <Button kind="quiet" onClick={() => onPick(null)}>
          Another
        </Button>
      </p>
    )
  const found: Picked[] = [
    ...(customers.data ?? []).map((one) => ({
      id: one.id,
      label: [one.name, one.reference, one.sites === 1 ? 'one site' : `${one.sites} sites`].filter(Boolean).join(', '),
    })),
    ...(sites.data?.rows ?? []).map((one) => ({ id: one.id, label: [one.label, one.town, one.customerName].filter(Boolean).join(', ') })),
  ].slice(0, SHOWN)
  return (
    <div>
      <TextInput
        label={label}
        hint={kind === 'customer' ? 'How the name begins, three letters or more' : 'Street, town, name or phone'}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        autoComplete="off"
      />
      {asked && found.length > 0 ? (
        <ul aria-label={label} className="border-l-2 border-line pl-3">
          {found.map((one) => (
            <li key={one.id}>
              <Button kind="quiet" onClick={() => onPick(one)}>
                Choose {one.label}
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}
