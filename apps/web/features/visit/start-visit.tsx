'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { useToday } from '@/client/use-today'

/** Starts the visit with a press; asks first where it is another day's or another crew's. */
export function StartVisit({ visit, onStart }: { visit: VisitPage; onStart: () => void }) {
  const display = useDisplay()
  const today = useToday()
  const words = useWords('visit')
  const saving = useWords('sending')
  const [asked, setAsked] = useState(false)
  const doubts = [
    ...(visit.day === today ? [] : [words('startOtherDay', { day: formatNearDay(visit.day, display) })]),
    ...(visit.yours === false ? [words('startOtherCrew', { crew: visit.crewName })] : []),
  ]
  const start = () => {
    setAsked(false)
    onStart()
  }
  return (
    <>
      <Button kind="ink" wide onClick={() => (doubts.length > 0 ? setAsked(true) : onStart())}>
        {words('start')}
      </Button>
      <Dialog
        open={asked}
        onClose={() => setAsked(false)}
        title={words('startTitle')}
        actions={
          <>
            <Button onClick={() => setAsked(false)}>{saving('cancel')}</Button>
            <Button kind="ink" onClick={start}>
              {words('start')}
            </Button>
          </>
        }
      >
        {doubts.map((doubt) => (
          <p key={doubt}>{doubt}</p>
        ))}
      </Dialog>
    </>
  )
}
