import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import type { SiteInput } from '@almanac/softener/site/site-input'

/** The bed as it stands in a backwash at `backwashGpm`, in water of `waterTemperatureF`; tank, filling and tube as the card's record has them. */
export function cardDrawing(input: SiteInput, backwashGpm: number | null, waterTemperatureF: number, firm: RebedFirm) {
  const { resinFt3: resinVolumeFt3, ...bed } = input
  return drawBed({ ...bed, resinVolumeFt3, backwashGpm, waterTemperatureF, ...firm })
}
