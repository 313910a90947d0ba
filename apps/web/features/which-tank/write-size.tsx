'use client'
import type { TankCandidate } from '@almanac/softener/identify/identify-tank'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatTankSize } from '@almanac/units/format'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { useCommand } from '@/client/use-command'

type Props = { bedId: string; best: TankCandidate | null; fromLabel: boolean }

/** The tank this page was opened for: what is on record, and one press that writes the size found. */
export function WriteSize({ bedId, best, fromLabel }: Props) {
  const texts = useBedTexts()
  const { api, me } = useSession()
  const mayChange = usePermission('change:site')
  const query = useQuery(api.beds.page.queryOptions({ input: { bedId } }))
  const change = useCommand(api.beds.changeFacts.mutationOptions())
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  const bed = query.data
  if (!bed) return <Skeleton lines={2} label="Loading the tank" />
  const size = best?.diameterIn && best.heightIn ? `${best.diameterIn}x${best.heightIn}` : null
  const asRecorded = best?.diameterIn === bed.tank.diameterIn && best?.heightIn === bed.tank.heightIn
  const write = () => {
    if (size === null) return
    change.send({
      ...{ bedId: bed.id, version: bed.version, tankVersion: bed.tank.version, valveVersion: bed.valve?.version ?? null },
      source: fromLabel ? 'label' : 'measured',
      facts: { tankSize: size },
    })
  }
  return (
    <section aria-label="The tank on record" className="mt-6 border-t border-ink pt-3">
      <p>
        Tank at{' '}
        <TextLink href={`/beds/${bed.id}`} link={Link}>
          {bed.site?.label ?? 'the workshop'}
        </TextLink>
        . On record: <strong>{texts.tank(bed.tank)}</strong>.
      </p>
      {change.error ? (
        <Problem happened={readFailure(change.error).message} kept="The size on record is unchanged; what you typed is still here." />
      ) : null}
      {change.isSuccess && asRecorded ? <Notice kind="done">Written to the tank. Its forecast and kit follow.</Notice> : null}
      {!mayChange ? (
        <p className="mt-1 text-soft">The office updates the record: tell them the size above.</p>
      ) : size && best && !asRecorded ? (
        <div className="mt-3">
          <Button kind="ink" wide onClick={write} busy={change.isPending} busyLabel="Writing">
            Write {formatTankSize(best.diameterIn, best.heightIn, me.company)} to this tank
          </Button>
        </div>
      ) : size && !change.isSuccess ? (
        <p className="mt-1 text-soft">This matches the record.</p>
      ) : null}
    </section>
  )
}
