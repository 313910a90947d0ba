import { readTank } from '@almanac/service-rules/import/read-tank'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import type { AmountDisplay } from '@almanac/units/display'

/** The room of a tank as its size is typed; null while it is not known. */
export function tankRoomOf(size: string, display: AmountDisplay) {
  const reading = size.trim() === '' ? null : readTank(size)
  return reading?.ok ? tankRoom(reading.value.diameterIn, reading.value.heightIn, display) : null
}
