import type { VisitPage } from '@almanac/contract/visits'
import { knownResinKind } from '@almanac/records/resin-kind'
import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Section } from '@almanac/ui/section'
import { useSession } from '@/client/providers'
import { tubeOf } from '@/client/valve-card'

/** The tank and its bed, to scale, as it is expected to be found. */
export function VisitDrawing({ visit }: { visit: VisitPage }) {
  const { me, figures } = useSession()
  const { bed } = visit
  if (!bed) return null
  const drawing = drawBed({
    diameterIn: bed.diameterIn,
    heightIn: bed.heightIn,
    nominalGrains: bed.nominalGrains,
    resinVolumeFt3: bed.volumeFt3,
    resinKind: knownResinKind(bed.resinKind),
    gravelLb: bed.gravelLb,
    tubeOutsideDiameterIn: tubeOf(figures, visit.tubeOdIn, visit.valveCardId),
    oldTubeLengthIn: visit.tubeCutIn,
    backwashGpm: visit.backwashGpm,
    waterTemperatureF: visit.waterTemperatureC === null ? null : visit.waterTemperatureC * 1.8 + 32,
    figures,
    unitSystem: me.company.unitSystem,
  })
  return (
    <Section title="The tank, to scale">
      {drawing.ok ? <BedDrawing drawing={drawing.value} title={`Bed at ${visit.siteLabel}`} height={560} /> : <p>{drawing.reason}</p>}
    </Section>
  )
}
