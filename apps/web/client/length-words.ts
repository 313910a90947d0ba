import type { TextLength } from '@almanac/contract/own-texts'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'

/** How many texts a message is sent as, and why it is so many. */
export function lengthWords({ characters, parts, wide }: TextLength, display: NumberDisplay): string {
  const length = `Sent as ${parts === 1 ? 'one text' : `${showWhole(parts, display)} texts`}: ${showWhole(characters, display)} characters with its link.`
  return wide === null ? length : `${length} “${wide}” makes each text shorter: 70 characters instead of 160.`
}
