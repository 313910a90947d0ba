'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Shape } from '@almanac/ui/shape'
import { StatusWord } from '@almanac/ui/status-word'
import { formatAmount } from '@almanac/units/amount-words'
import { showNumber } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** What the sheet's kits take from the stores, to be loaded in the morning; what the shelf lacks stands out. */
export function LoadList({ crewDayId }: { crewDayId: string }) {
  const { api, me } = useSession()
  const list = useQuery(api.stores.loadList.queryOptions({ input: { crewDayId } }))
  const pick = useCommand(api.stores.pick.mutationOptions())
  const failure = list.error ?? pick.error
  if (failure) return <Problem happened={readFailure(failure).message} onRetry={() => void list.refetch()} />
  if (!list.data || list.data.lines.length === 0) return null
  const { lines, picked } = list.data
  const short = lines.filter((line) => line.quantity > line.onHand)
  return (
    <details data-paper className="border-t border-line px-3 py-2 sm:px-5">
      <summary className="min-h-6 cursor-pointer">
        Load: {lines.length} items{picked ? ', loaded' : ''}
        {short.length > 0 ? (
          <span className="ml-2 text-danger">
            <Shape name="triangle" /> the stores lack {short.map((line) => line.name).join(', ')}
          </span>
        ) : null}
      </summary>
      <ul className="my-2 max-w-[60ch]">
        {lines.map((line) => (
          <li key={line.stockItemId} className="flex justify-between gap-6 border-b border-line py-1">
            <span>{line.name}</span>
            <span className={line.quantity > line.onHand ? 'text-danger' : undefined}>
              {formatAmount(line.quantity, line.unit, me.company)}
              {line.quantity > line.onHand ? `, ${showNumber(line.onHand, 2, me.company)} on hand` : ''}
            </span>
          </li>
        ))}
      </ul>
      <span className="print:hidden">
        {picked ? (
          <StatusWord shape="tick" tone="done">
            on the vehicle
          </StatusWord>
        ) : (
          <Button busy={pick.isPending} onClick={() => pick.send({ crewDayId })}>
            All of it is loaded
          </Button>
        )}
      </span>
    </details>
  )
}
