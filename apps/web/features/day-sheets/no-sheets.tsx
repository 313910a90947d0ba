import { Button } from '@almanac/ui/button'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSession } from '@/client/providers'
import { CopyDay } from './copy-day.tsx'
import { FormCrewsPart } from './start-plan.tsx'

type Props = { day: string; today: string; copyFrom: string | null; onNew: () => void }

/** A day without sheets: what belongs there, and how it comes there; a company that has entered nobody begins with its people. */
export function NoSheets({ day, today, copyFrom, onNew }: Props) {
  const { api } = useSession()
  const choices = useQuery(api.daySheets.crewChoices.queryOptions({ input: { day } }))
  if (choices.data?.colleagues.length === 0)
    return (
      <Empty
        title="Nobody to send yet"
        action={
          <LinkButton href="/crews" kind="ink" link={Link}>
            Add people and vehicles
          </LinkButton>
        }
      >
        A day sheet says who works together and what they drive. Enter them first.
      </Empty>
    )
  return (
    <Empty
      title="No crew has a sheet on this day yet"
      action={
        <div className="flex flex-wrap gap-3">
          <CopyDay day={day} copyFrom={copyFrom} main />
          {day >= today ? <FormCrewsPart day={day} /> : null}
          <Button kind={copyFrom ? 'line' : 'ink'} onClick={onNew}>
            Open a sheet
          </Button>
        </div>
      }
    >
      A day sheet says who works together, what they drive and when; visits are then booked on it.
    </Empty>
  )
}
