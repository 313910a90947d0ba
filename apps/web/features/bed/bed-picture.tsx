import type { BedPage } from '@almanac/contract/beds'
import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Notice } from '@almanac/ui/notice'
import { TextLink } from '@almanac/ui/text-link'
import { Why } from '@almanac/ui/why'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** The tank and bed to scale; what had to be assumed for it can be asked. */
export function BedPicture({ bed, title }: { bed: BedPage; title: string }) {
  const firm = useRebedFirm()
  const words = useWords('bed')
  const drawn = drawingOf(bed.facts, { temperatureC: bed.waterTemperatureC }, firm)
  if (!drawn.ok)
    return (
      <Notice
        kind="mind"
        action={
          <TextLink href={`/which-tank?bedId=${bed.id}`} link={Link}>
            {words('whichTank')}
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
        <span>{words('toScale')}</span>
        {drawn.assumptions.length > 0 ? (
          <Why
            explanation={{
              title: words('howDrawn'),
              summary: drawn.value.description,
              assumptions: drawn.assumptions,
              missing: drawn.missing,
              source: drawn.sources.join('; '),
            }}
          >
            {words('assumedFigures', { count: drawn.assumptions.length })}
          </Why>
        ) : (
          <span>{words('allRecorded')}</span>
        )}
        {bed.softener ? (
          <TextLink href={`/softeners/${bed.softener.id}/settings`} link={Link}>
            {words('howToSet')}
          </TextLink>
        ) : null}
        <TextLink href={`/which-tank?bedId=${bed.id}`} link={Link}>
          {words('checkSize')}
        </TextLink>
      </p>
    </>
  )
}
