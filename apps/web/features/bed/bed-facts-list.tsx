import type { BedPage } from '@almanac/contract/beds'
import type { EndCause } from '@almanac/records/end-cause'
import { DefinitionList } from '@almanac/ui/definition-list'
import { formatCutLengthIn, formatFlowGpm, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { showNumber, showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { useSourceText } from '@/client/use-source-text'
import { enteredNow, type QuantityName } from './fact-texts.ts'

/** The bed's facts, each with where it came from. */
export function BedFactsList({ bed }: { bed: BedPage }) {
  const texts = useBedTexts()
  const sourceText = useSourceText()
  const [words, resins, causes] = [useWords('bed'), useWords('resinKind'), useWords('endCause')]
  const { me } = useSession()
  const display = me.company
  const from = (...facts: string[]) => {
    const source = facts.map((fact) => bed.sources[fact]).find(Boolean)
    return source ? sourceText(source) : null
  }
  const typed = (fact: QuantityName, value: number, shown: string) => {
    const entered = enteredNow(bed, fact, value)
    const written = entered ? `${showNumber(entered.value, 6, display)} ${entered.unit.replace('ft3', 'ft³')}` : null
    const said = written && written !== shown ? words('typedAs', { value: shown, typed: written }) : shown
    return entered?.why ? words('unusual', { value: said, reason: entered.why }) : said
  }
  const known = (value: number | null | undefined, fact: QuantityName, show: (value: number) => string) =>
    value === null || value === undefined ? null : typed(fact, value, show(value))
  const began = texts.began(bed)
  const span = texts.span(bed.beganEarliest, bed.beganLatest)
  return (
    <DefinitionList
      facts={[
        {
          name: words('tank'),
          value:
            bed.tank.diameterIn || bed.tank.sizeAsWritten || bed.tank.nominalGrains
              ? [texts.tank(bed.tank), bed.tank.nominalGrains && words('grain', { count: showWhole(bed.tank.nominalGrains, display) })]
                  .filter(Boolean)
                  .join(', ')
              : null,
          from: from('tankSize', 'diameterIn', 'nominalGrains'),
        },
        { name: words('resin'), value: bed.resinKind === 'unknown' ? null : resins(bed.resinKind), from: from('resinKind') },
        {
          name: words('resinVolume'),
          value: known(bed.volumeFt3, 'volume', (value) => formatVolumeFt3(value, display)),
          from: from('volumeFt3'),
        },
        {
          name: words('gravel'),
          value: bed.gravelLb === 0 ? words('noGravel') : known(bed.gravelLb, 'gravel', (value) => formatWeightLb(value, display)),
          from: from('gravelLb'),
        },
        {
          name: words('tube'),
          value: known(bed.tubeCutIn, 'tubeCut', (value) => formatCutLengthIn(value, display)),
          from: from('tubeCutIn'),
        },
        {
          name: words('installed'),
          value: began && span && span !== began ? `${began} (${span})` : began,
          from: from('began', 'beganEarliest'),
        },
        { name: words('lastSeen'), value: bed.lastSeenDay && formatDay(bed.lastSeenDay, display), from: from('lastSeenDay') },
        {
          name: words('backwash'),
          value: known(bed.valve?.backwashGpm, 'backwash', (value) => formatFlowGpm(value, display)),
          from: from('backwashGpm'),
        },
        ...(bed.endedLatest
          ? [
              { name: words('endedOn'), value: texts.span(bed.endedEarliest, bed.endedLatest) },
              { name: words('endReason'), value: causes((bed.endCause ?? 'unknown') as EndCause) },
            ]
          : []),
      ]}
    />
  )
}
