import type { TwinTank } from '@almanac/records/arrangement'
import { showWhole } from '@almanac/units/format-number'
import type { Speaking } from '../kit/speaking.ts'

/** Which of several tanks, as it is recorded: "tank 1 of 2"; work on all of them: "each of 2 tanks in turn". */
export const twinName = ({ position, of }: TwinTank, { words, display }: Speaking): string => {
  const count = showWhole(of, display)
  return position === null ? words('twinAll', { count }) : words('twin', { position: showWhole(position, display), count })
}
