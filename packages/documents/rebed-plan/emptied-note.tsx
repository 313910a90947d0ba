import { formatCutLengthIn } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { View } from '@react-pdf/renderer'
import { BOLD, INK, Printed } from '../print/printed.tsx'
import type { MadePlan } from './make-plan.ts'

/** Before all else: the tank is empty, since when, and what was found then. Nothing of a tank with its bed in it. */
export function EmptiedNote({ plan: { facts, words, asks } }: { plan: MadePlan }) {
  const { emptied, display } = facts
  if (!emptied) return null
  const { day, found, tubeIn, gravel, condition } = emptied
  const known = [
    tubeIn === null ? null : `${asks('old-tube-length-in')}: ${formatCutLengthIn(tubeIn, display)}.`,
    gravel ? `${asks('gravel-found')}: ${asks(`gravel-found/${gravel}`).toLowerCase()}.` : null,
    condition ? `${asks('tank-condition')}: ${asks(`tank-condition/${condition}`).toLowerCase()}.` : null,
    found ? words('foundThen', { found: found.replace(/\s+/g, ' ') }) : null,
  ].filter((one) => one !== null)
  return (
    <View style={{ borderWidth: 1.4, borderColor: INK, paddingVertical: 3, paddingHorizontal: 6, marginTop: 3 }}>
      <Printed style={{ fontFamily: BOLD }}>{words('emptied', { day: formatDay(day, display) })}</Printed>
      {known.length > 0 ? <Printed lines={3}>{known.join(' ')}</Printed> : null}
    </View>
  )
}
