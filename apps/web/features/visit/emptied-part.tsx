import type { VisitPage } from '@almanac/contract/visits'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { formatCutLengthIn } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'

/** Of a tank that an earlier visit left without its bed: that it did, and what that visit found. Nothing of any other. */
export function EmptiedPart({ visit }: { visit: Pick<VisitPage, 'emptied'> }) {
  const display = useDisplay()
  const { me } = useSession()
  const words = useWords('visit')
  const asks = useWords('asks')
  const { emptied } = visit
  if (!emptied) return null
  const { day, found, tubeIn, gravel, condition } = emptied
  const facts = [
    found ? { name: words('found'), value: <span className="whitespace-pre-line">{found}</span> } : null,
    tubeIn === null ? null : { name: asks('old-tube-length-in'), value: formatCutLengthIn(tubeIn, me.company) },
    gravel ? { name: asks('gravel-found'), value: asks(`gravel-found/${gravel}`) } : null,
    condition ? { name: asks('tank-condition'), value: asks(`tank-condition/${condition}`) } : null,
  ]
  return (
    <>
      <Notice kind="mind">{words('emptied', { day: formatDay(day, display) })}</Notice>
      <DefinitionList facts={facts.filter((one) => one !== null)} />
    </>
  )
}
