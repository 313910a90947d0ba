import type { BedPage } from '@almanac/contract/beds'
import { type EndCause, endCauseWords } from '@almanac/records/end-cause'
import { resinKindWords } from '@almanac/records/resin-kind'
import { DefinitionList } from '@almanac/ui/definition-list'
import { formatCutLengthIn, formatFlowGpm, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatDay, formatSource } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { enteredNow, type QuantityName } from './fact-texts.ts'

/** The bed's facts, each with where it came from. */
export function BedFactsList({ bed }: { bed: BedPage }) {
  const texts = useBedTexts()
  const { me } = useSession()
  const display = me.company
  const from = (...facts: string[]) => {
    const source = facts.map((fact) => bed.sources[fact]).find(Boolean)
    return source ? formatSource(source, display) : null
  }
  const typed = (fact: QuantityName, value: number, shown: string) => {
    const entered = enteredNow(bed, fact, value)
    const written = entered ? `${entered.value} ${entered.unit.replace('ft3', 'ft³')}` : null
    const kept = entered?.why ? `; unusual, kept because: ${entered.why}` : ''
    return (written && written !== shown ? `${shown} (typed as ${written})` : shown) + kept
  }
  const known = (value: number | null | undefined, fact: QuantityName, show: (value: number) => string) =>
    value === null || value === undefined ? null : typed(fact, value, show(value))
  const began = texts.began(bed)
  const span = texts.span(bed.beganEarliest, bed.beganLatest)
  return (
    <DefinitionList
      facts={[
        {
          name: 'Tank',
          value:
            bed.tank.diameterIn || bed.tank.sizeAsWritten || bed.tank.nominalGrains
              ? [texts.tank(bed.tank), bed.tank.nominalGrains && `${showWhole(bed.tank.nominalGrains, display)} grain`]
                  .filter(Boolean)
                  .join(', ')
              : null,
          from: from('tankSize', 'diameterIn', 'nominalGrains'),
        },
        { name: 'Resin', value: bed.resinKind === 'unknown' ? null : resinKindWords[bed.resinKind], from: from('resinKind') },
        {
          name: 'Resin volume',
          value: known(bed.volumeFt3, 'volume', (value) => formatVolumeFt3(value, display)),
          from: from('volumeFt3'),
        },
        {
          name: 'Gravel',
          value: bed.gravelLb === 0 ? 'none' : known(bed.gravelLb, 'gravel', (value) => formatWeightLb(value, display)),
          from: from('gravelLb'),
        },
        {
          name: 'Distributor tube',
          value: known(bed.tubeCutIn, 'tubeCut', (value) => formatCutLengthIn(value, display)),
          from: from('tubeCutIn'),
        },
        {
          name: 'Resin installed',
          value: began && span && span !== began ? `${began} (${span})` : began,
          from: from('began', 'beganEarliest'),
        },
        { name: 'Last seen working', value: bed.lastSeenDay && formatDay(bed.lastSeenDay, display), from: from('lastSeenDay') },
        {
          name: 'Backwash',
          value: known(bed.valve?.backwashGpm, 'backwash', (value) => formatFlowGpm(value, display)),
          from: from('backwashGpm'),
        },
        ...(bed.endedLatest
          ? [
              { name: 'Ended', value: texts.span(bed.endedEarliest, bed.endedLatest) },
              { name: 'Reason it ended', value: endCauseWords[(bed.endCause ?? 'unknown') as EndCause] },
            ]
          : []),
      ]}
    />
  )
}
