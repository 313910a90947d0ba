import type { Language } from '@almanac/records/language'
import type { PrintedHead } from '@almanac/records/letterhead'
import type { Paper } from '@almanac/records/paper'
import { Page, View } from '@react-pdf/renderer'
import { Letterhead } from '../print/letterhead.tsx'
import { Printed } from '../print/printed.tsx'

/** One letter: the lines of its address, its day as its reader writes it, and its text with empty lines between paragraphs. */
export type Letter = { address: string; day: string; subject: string; body: string }
export type LetterHead = PrintedHead & { paper: Paper; language: Language }

const INCH = 72
const MM = 72 / 25.4

/**
 * Where the address shows in a window, in points from the top left of the sheet. Letter: a No. 10 envelope (4 1/8 × 9 1/2 in) whose window of 1 1/8 × 4 1/2 in
 * lies 7/8 in from the left and 1/2 in from the foot, the usual one; a sheet folded in three may shift in it by 1 in sideways and 0.46 in upwards. A4: DIN 5008
 * form B, the address below the zone for remarks, 62.7 mm from the top in a field that begins 20 mm from the left.
 */
const WINDOW = {
  letter: { top: 2.5 * INCH, left: 1 * INCH, width: 3.4 * INCH },
  a4: { top: 62.7 * MM, left: 25 * MM, width: 80 * MM },
} as const satisfies Record<Paper, { top: number; left: number; width: number }>
/** The text begins below the window's fold. */
const TEXT_TOP = { letter: 4 * INCH, a4: 105 * MM } as const satisfies Record<Paper, number>

/** A word longer than a line of the narrowest sheet is broken: a hostile name is not to run off the paper. */
const broken = (text: string) => text.replace(/\S{36}(?=\S)/g, '$& ')

/** A letter on its sheet: the company at the top, the address where a window shows it, the text below. */
export function LetterPage({ letter, head }: { letter: Letter; head: LetterHead }) {
  const { paper } = head
  const { top, left, width } = WINDOW[paper]
  return (
    <Page
      size={paper === 'a4' ? 'A4' : 'LETTER'}
      style={{ fontFamily: 'Helvetica', paddingTop: 36, paddingBottom: 54, paddingLeft: left, paddingRight: left }}
    >
      <View style={{ height: TEXT_TOP[paper] - 36 }}>
        <Letterhead head={head} />
      </View>
      <View style={{ position: 'absolute', top, left, width }}>
        {letter.address.split('\n').map((line, i) => (
          <Printed key={i} style={{ fontSize: 10.5 }} lines={1}>
            {broken(line)}
          </Printed>
        ))}
      </View>
      <Printed style={{ fontSize: 10.5 }}>{letter.day}</Printed>
      <Printed style={{ fontSize: 11.5, fontFamily: 'Helvetica-Bold', marginTop: 12, marginBottom: 6 }}>{broken(letter.subject)}</Printed>
      {letter.body.split(/\n{2,}/).map((paragraph, i) => (
        <Printed key={i} style={{ fontSize: 11, lineHeight: 1.35, marginTop: 8 }}>
          {broken(paragraph)}
        </Printed>
      ))}
    </Page>
  )
}
