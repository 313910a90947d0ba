import type { VisitPage } from '@almanac/contract/visits'
import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { twinName } from '@almanac/softener/tanks/twin-name'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { isEmptied } from './procedure-of.ts'

/** The tank and its bed, to scale, as it is expected to be found, or filled. */
export function VisitDrawing({ visit, height }: { visit: VisitPage; height: number }) {
  const firm = useRebedFirm()
  const words = useWords('visit')
  if (!visit.bed) return null
  const drawing = drawingOf(visit.bed, visit.water, firm)
  const title = visit.twin
    ? words('drawingOfTank', { site: visit.siteLabel, tank: twinName(visit.twin, firm) })
    : words('drawingOf', { site: visit.siteLabel })
  return (
    <Section title={isEmptied(visit) ? words('drawingAfter') : visit.twin ? title : words('drawing')}>
      {drawing.ok ? <BedDrawing drawing={drawing.value} title={title} height={height} /> : <p>{drawing.reason}</p>}
    </Section>
  )
}
