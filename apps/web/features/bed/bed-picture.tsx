import type { BedPage } from '@almanac/contract/beds'
import { knownResinKind } from '@almanac/records/resin-kind'
import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Notice } from '@almanac/ui/notice'
import { TextLink } from '@almanac/ui/text-link'
import { Why } from '@almanac/ui/why'
import Link from 'next/link'
import { useSession } from '@/client/providers'
import { tubeOf } from '@/client/valve-card'

/** The tank and bed to scale; what had to be assumed for it can be asked. */
export function BedPicture({ bed, title }: { bed: BedPage; title: string }) {
  const { me, figures } = useSession()
  const drawn = drawBed({
    diameterIn: bed.tank.diameterIn,
    heightIn: bed.tank.heightIn,
    nominalGrains: bed.tank.nominalGrains,
    resinVolumeFt3: bed.volumeFt3,
    resinKind: knownResinKind(bed.resinKind),
    gravelLb: bed.gravelLb,
    oldTubeLengthIn: bed.tubeCutIn,
    tubeOutsideDiameterIn: tubeOf(figures, bed.valve?.tubeOdIn, bed.valve?.cardId),
    backwashGpm: bed.valve?.backwashGpm ?? null,
    waterTemperatureF: bed.waterTemperatureC === null ? null : (bed.waterTemperatureC * 9) / 5 + 32,
    figures,
    unitSystem: me.company.unitSystem,
  })
  if (!drawn.ok)
    return (
      <Notice
        kind="mind"
        action={
          <TextLink href={`/which-tank?bedId=${bed.id}`} link={Link}>
            Which tank is it?
          </TextLink>
        }
      >
        {drawn.reason}
      </Notice>
    )
  return (
    <>
      <BedDrawing drawing={drawn.value} title={title} />
      <p className="text-small text-soft">
        To scale.{' '}
        {drawn.assumptions.length > 0 ? (
          <Why
            explanation={{
              title: 'How the drawing was made',
              summary: drawn.value.description,
              assumptions: drawn.assumptions,
              missing: drawn.missing,
              source: drawn.sources.join('; '),
            }}
          >
            {drawn.assumptions.length === 1 ? 'One figure is assumed' : `${drawn.assumptions.length} figures are assumed`}
          </Why>
        ) : (
          'Every figure is from the record.'
        )}{' '}
        {bed.softener ? (
          <TextLink href={`/softeners/${bed.softener.id}/settings`} link={Link}>
            How this softener should be set
          </TextLink>
        ) : null}{' '}
        <TextLink href={`/which-tank?bedId=${bed.id}`} link={Link}>
          Check the tank’s size
        </TextLink>
      </p>
    </>
  )
}
