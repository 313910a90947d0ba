import type { BedPage } from '@almanac/contract/beds'
import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Notice } from '@almanac/ui/notice'
import { TextLink } from '@almanac/ui/text-link'
import { Why } from '@almanac/ui/why'
import Link from 'next/link'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** The tank and bed to scale; what had to be assumed for it can be asked. */
export function BedPicture({ bed, title }: { bed: BedPage; title: string }) {
  const firm = useRebedFirm()
  const drawn = drawingOf(bed.facts, { temperatureC: bed.waterTemperatureC }, firm)
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
      <p className="flex flex-wrap gap-x-4 gap-y-1 text-small text-soft">
        <span>To scale.</span>
        {drawn.assumptions.length > 0 ? (
          <Why
            explanation={{
              title: 'How we drew it',
              summary: drawn.value.description,
              assumptions: drawn.assumptions,
              missing: drawn.missing,
              source: drawn.sources.join('; '),
            }}
          >
            {drawn.assumptions.length === 1 ? 'One figure is assumed' : `${drawn.assumptions.length} figures are assumed`}
          </Why>
        ) : (
          <span>Every figure is from the record.</span>
        )}
        {bed.softener ? (
          <TextLink href={`/softeners/${bed.softener.id}/settings`} link={Link}>
            How to set this softener
          </TextLink>
        ) : null}
        <TextLink href={`/which-tank?bedId=${bed.id}`} link={Link}>
          Check the tank’s size
        </TextLink>
      </p>
    </>
  )
}
