import { headLines, type PrintedHead } from '@almanac/records/letterhead'
import { Image, View } from '@react-pdf/renderer'
import { BOLD, Printed, SOFT } from './printed.tsx'

/** Room of a logo at the head of a letter or report, points. */
const LOGO = { width: 150, height: 52 } as const

/** A logo, as large as its room lets it be, and no larger than it is at 96 pixels an inch. */
export function Logo({ logo, room }: { logo: NonNullable<PrintedHead['logo']>; room: { width: number; height: number } }) {
  const scale = Math.min(room.width / logo.width, room.height / logo.height, 72 / 96)
  return <Image src={{ data: Buffer.from(logo.png), format: 'png' }} style={{ width: logo.width * scale, height: logo.height * scale }} />
}

/** The head of a paper: logo and name on the left, everything else on the right in small lines. The one home of how a paper begins. */
export function Letterhead({ head, size = 8.5 }: { head: PrintedHead; size?: number }) {
  const { firmName, logo } = head
  return (
    <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
      <View style={{ flexGrow: 1, flexBasis: 0, paddingRight: 12 }}>
        {logo ? (
          <View style={{ marginBottom: 3 }}>
            <Logo logo={logo} room={LOGO} />
          </View>
        ) : null}
        <Printed style={{ fontSize: 14, fontFamily: BOLD }} lines={1}>
          {firmName}
        </Printed>
      </View>
      <View style={{ width: 24 * size, flexShrink: 0 }}>
        {headLines(head).map((line, i) => (
          <Printed key={i} style={{ fontSize: size, color: SOFT, textAlign: 'right' }} lines={1}>
            {line}
          </Printed>
        ))}
      </View>
    </View>
  )
}
