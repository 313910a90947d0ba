'use client'
import type { TankCandidate } from '@almanac/softener/identify/identify-tank'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatTankSize } from '@almanac/units/format'
import { useWords } from '@almanac/words/use-words'
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
  const words = useWords('whichTank')
  const { api, me } = useSession()
  const mayChange = usePermission('change:site')
  const query = useQuery(api.beds.page.queryOptions({ input: { bedId } }))
  const change = useCommand(api.beds.changeFacts.mutationOptions())
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  const bed = query.data
  if (!bed) return <Skeleton lines={2} label={words('loadingTank')} />
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
    <section aria-label={words('record')} className="mt-6 border-t border-ink pt-3">
      <p>
        {words.rich('onRecord', {
          ...{ where: bed.site?.label ?? words('workshop'), tank: texts.tank(bed.tank) },
          site: (label) => (
            <TextLink href={`/beds/${bed.id}`} link={Link}>
              {label}
            </TextLink>
          ),
          size: (size) => <strong>{size}</strong>,
        })}
      </p>
      {change.error ? <Problem happened={readFailure(change.error).message} kept={words('notWritten')} /> : null}
      {change.isSuccess && asRecorded ? <Notice kind="done">{words('written')}</Notice> : null}
      {!mayChange ? (
        <p className="mt-1 text-soft">{words('tellOffice')}</p>
      ) : size && best && !asRecorded ? (
        <div className="mt-3">
          <Button kind="ink" wide onClick={write} busy={change.isPending} busyLabel={words('writing')}>
            {words('write', { size: formatTankSize(best.diameterIn, best.heightIn, me.company) })}
          </Button>
        </div>
      ) : size && !change.isSuccess ? (
        <p className="mt-1 text-soft">{words('matches')}</p>
      ) : null}
    </section>
  )
}
