import { Button } from '@almanac/ui/button'
import { Empty } from '@almanac/ui/empty'
import { CopyDay } from './copy-day.tsx'

/** A day without sheets: what belongs there, and how it comes there. */
export function NoSheets({ day, copyFrom, onNew }: { day: string; copyFrom: string | null; onNew: () => void }) {
  return (
    <Empty
      title="No crew has a sheet on this day yet"
      action={
        <div className="flex flex-wrap gap-3">
          <CopyDay day={day} copyFrom={copyFrom} main />
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
