import { knownResinKind } from '@almanac/records/resin-kind'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { IRON_ALLOWANCE, MANGANESE_ALLOWANCE } from '../water/compensated-hardness.ts'
import type { FirmFigures } from './firm-figures.ts'
import { tankKey } from './read-tank.ts'

/** A figure as it is stored under its key, the reverse of `setFigure`; null for a key without one, and for bags and prices nobody has said. */
export function figureValue(figures: FirmFigures, key: string): unknown {
  const [kind = '', name = ''] = key.split(/:(.*)/s)
  if (kind === 'tank') return plain(figures.tanks.find((tank) => tankKey(tank) === key))
  if (kind === 'valve') return plain(figures.valves.find((card) => card.id === name))
  if (kind === 'curve') return Object.entries(figures.curves).find(([id]) => id === name)?.[1].points ?? null
  return PLAIN[key]?.(figures) ?? null
}

const PLAIN: Readonly<Record<string, (figures: FirmFigures) => unknown>> = {
  bags: ({ bagSizes }) => bagSizes?.map((bag) => bag.volumeFt3),
  'allowance:iron': ({ allowance }) => allowance.ironGpgPerMgL,
  'allowance:manganese': ({ allowance }) => allowance.manganeseGpgPerMgL,
  'gravel-from-ft3': ({ gravelFromFt3 }) => gravelFromFt3,
  'outlet-limit-gpg': ({ outletLimitGpg }) => outletLimitGpg,
  'backwash:expansion': ({ backwash }) => backwash.wantedExpansion,
  'backwash:gpm-ft2': ({ backwash }) => backwash.gpmFt2,
  reserve: ({ reserve }) => reserve,
  'price:salt-per-lb': ({ saltPriceMinorPerLb }) => saltPriceMinorPerLb,
  'price:water-per-gal': ({ waterPriceMinorPerGal }) => waterPriceMinorPerGal,
}

/** A row or card without what follows from its key. */
function plain(row: { source: string; id?: string } | undefined): unknown {
  if (!row) return null
  const { source: _source, id: _id, ...value } = row
  return value
}

/** Where the usual figure under a key comes from. */
export function usualSource(usual: FirmFigures, key: string): string {
  const [kind = '', name = ''] = key.split(/:(.*)/s)
  if (kind === 'tank') return usual.tanks.find((tank) => tankKey(tank) === key)?.source ?? ''
  if (kind === 'valve') return usual.valves.find((card) => card.id === name)?.source ?? ''
  if (kind === 'curve') return usual.curves[knownResinKind(name) ?? 'gel-8'].source
  if (key === 'allowance:iron') return IRON_ALLOWANCE.source
  if (key === 'allowance:manganese') return MANGANESE_ALLOWANCE.source
  if (key === 'backwash:gpm-ft2') return `houses 4 to 5: ${COMMON_PRACTICE}; 6 to 8: Ten States Standards §4.4.2`
  return kind === 'price' ? 'no default price' : COMMON_PRACTICE
}
