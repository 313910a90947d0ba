'use client'
import type { DrivesLearned } from '@almanac/contract/drive-pace'
import { DRIVE_PACE_KEY, type DrivePace, PACE_NEEDS } from '@almanac/records/drive-pace'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { figureName, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { paceWords } from '@/client/pace-words'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** One more drive a day changes the count and hardly the pace: offered is what would change a drive by a percent. */
const percents = ({ factor, shortFactor, longFactor }: DrivePace) =>
  [factor, shortFactor, longFactor].map((one) => Math.round(one * 100)).join()
const isSame = ({ inUse, found }: DrivesLearned) => inUse !== null && found !== null && percents(inUse) === percents(found)

/** How long the crews' own drives take beside usual speeds: shown, and used in plans once the owner says so. */
export function DrivesPart() {
  const { api, me } = useSession()
  const { data, error, refetch } = useQuery(api.firm.drives.queryOptions())
  const [asking, setAsking] = useState<'take' | 'back' | null>(null)
  if (error) return <Problem happened={readFailure(error).message} onRetry={() => void refetch()} />
  if (!data) return <Skeleton lines={3} label="Loading the drives" />
  const { inUse, found, recorded } = data
  const isNew = found !== null && !isSame(data)
  return (
    <Section
      title="Driving times"
      actions={
        <>
          {isNew ? <Button onClick={() => setAsking('take')}>Use your crews’ pace</Button> : null}
          {inUse ? <Button onClick={() => setAsking('back')}>Back to usual speeds</Button> : null}
        </>
      }
    >
      <p className="max-w-[75ch]">
        <strong>{inUse ? 'At your crews’ pace.' : 'At usual speeds.'}</strong> {inUse ? `In plans, ${paceWords(inUse, me.company)}.` : ''}
      </p>
      <p className="mt-1 max-w-[75ch] text-soft">{recordedWords(data, me.company)}</p>
      {recorded.setAside > 0 ? (
        <p className="mt-1 max-w-[75ch] text-soft">
          Left out: {showWhole(recorded.setAside, me.company)} recorded {recorded.setAside === 1 ? 'drive' : 'drives'} faster than a van can
          drive, far from all others, or without a place on the map.
        </p>
      ) : null}
      {asking ? <AskDrives asking={asking} learned={data} onClose={() => setAsking(null)} /> : null}
    </Section>
  )
}

function recordedWords(learned: DrivesLearned, display: NumberDisplay): string {
  const { found, recorded } = learned
  if (isSame(learned)) return 'The drives of the last twelve months say the same.'
  if (found) return `The last twelve months say that ${paceWords(found, display)} on ${showWhole(found.days, display)} days.`
  const compares = `The app compares once there are ${PACE_NEEDS.drives} drives on ${PACE_NEEDS.days} days.`
  if (recorded.used === 0) return `No drives between visits are recorded yet. ${compares}`
  const so = `${showWhole(recorded.used, display)} ${recorded.used === 1 ? 'drive was' : 'drives were'} recorded on ${showWhole(recorded.days, display)}`
  return `So far ${so} ${recorded.days === 1 ? 'day' : 'days'}. ${compares}`
}

function AskDrives({ asking, learned, onClose }: { asking: 'take' | 'back'; learned: DrivesLearned; onClose: () => void }) {
  const { api, me } = useSession()
  const [seen] = useState(learned)
  const take = useCommand(api.firm.takeDrives.mutationOptions(), { onDone: onClose })
  const back = useCommand(api.firm.resetFigure.mutationOptions(), { onDone: onClose })
  const isTaking = asking === 'take'
  const send = ({ version, found }: DrivesLearned) => {
    if (!isTaking) back.send({ key: DRIVE_PACE_KEY, version, note: null })
    else if (found) take.send({ version, pace: found })
  }
  return (
    <FormDialog
      title={isTaking ? 'Use your crews’ pace' : 'Back to usual speeds'}
      lead={
        isTaking && seen.found
          ? `In your records ${paceWords(seen.found, me.company)}. New plans, best places and the drives on day sheets will use it. Visits keep the times they’re booked for. You can go back at any time.`
          : 'New plans, best places and the drives on day sheets go back to usual speeds. Visits keep the times they’re booked for. Your pace stays in the history.'
      }
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(learned)}
      busy={take.isPending || back.isPending}
      error={take.error ?? back.error}
      saveLabel={isTaking ? 'Use it' : 'Go back'}
      names={{ value: figureName(DRIVE_PACE_KEY, me.company) }}
      show={(_, shown) => (shown === null ? 'usual speeds' : figureWords(DRIVE_PACE_KEY, shown, me.company))}
    >
      {null}
    </FormDialog>
  )
}
