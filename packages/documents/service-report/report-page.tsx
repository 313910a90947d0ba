import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { wordsIn } from '@almanac/words/words-in'
import { Image, Page, Text, View } from '@react-pdf/renderer'
import type { ReactNode } from 'react'
import { Letterhead } from '../print/letterhead.tsx'
import { printable } from '../print/printable-text.ts'
import { BOLD, FAMILY, INK, LINE, Printed } from '../print/printed.tsx'
import { BedFigure } from '../rebed-plan/bed-figure.tsx'
import type { ReportFacts } from './report-facts.ts'
import { type Line, reportLines } from './report-lines.ts'

/** The customer reads it without glasses: nothing is smaller. */
const SIZE = 11
const LEADING = 1.3
/** Room of the small drawing, points. */
const FIGURE = { width: 130, height: 210, left: 10, top: 6, bottom: 6, tankWidth: 110 } as const

function Said({ children, bold }: { children: string; bold?: boolean }) {
  return <Printed style={{ fontSize: SIZE, lineHeight: LEADING, ...(bold ? { fontFamily: BOLD } : {}) }}>{children}</Printed>
}

function Title({ children }: { children: string }) {
  return (
    <View style={{ borderBottomWidth: 1, borderColor: INK, marginBottom: 4 }}>
      <Printed style={{ fontSize: 13, fontFamily: BOLD }}>{children}</Printed>
    </View>
  )
}

/** A part that stands on one sheet with its heading. */
function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <View wrap={false} style={{ marginTop: 12 }}>
      <Title>{title}</Title>
      {children}
    </View>
  )
}

function Lines({ lines }: { lines: readonly Line[] }) {
  return lines.map(({ name, value }) => (
    <View key={name} wrap={false} style={{ flexDirection: 'row', borderBottomWidth: 0.4, borderColor: LINE, paddingVertical: 2 }}>
      <View style={{ width: 190, flexShrink: 0, paddingRight: 8 }}>
        <Said>{name}</Said>
      </View>
      <View style={{ flexGrow: 1, flexBasis: 0 }}>
        <Said bold>{value}</Said>
      </View>
    </View>
  ))
}

function Photograph({ bytes, name }: { bytes: Uint8Array; name: string }) {
  return (
    <View style={{ width: '48.5%', marginTop: 6 }}>
      <Image src={{ data: Buffer.from(bytes), format: 'jpg' }} style={{ width: '100%', height: 190, objectFit: 'contain' }} />
      <Said>{name}</Said>
    </View>
  )
}

/** What was photographed, two beside each other, each with what it shows; the heading stays with the first two. */
function Photographs({ facts }: { facts: ReportFacts }) {
  const { display, photographs, morePhotographs } = facts
  const words = wordsIn(display.locale, 'report')
  const kinds = wordsIn(display.locale, 'photographs')
  const rows = photographs.flatMap((_, at) => (at % 2 === 0 ? [photographs.slice(at, at + 2)] : []))
  return (
    <View style={{ marginTop: 12 }}>
      {rows.map((row, at) => (
        <View key={at} wrap={false}>
          {at === 0 ? <Title>{words('photographs')}</Title> : null}
          <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
            {row.map((one, i) => (
              <Photograph key={i} bytes={one.bytes} name={kinds(`kind/${one.kind}`)} />
            ))}
          </View>
        </View>
      ))}
      {morePhotographs > 0 ? <Said>{words('morePhotographs', { count: morePhotographs })}</Said> : null}
    </View>
  )
}

function Signature({ signature, display }: { signature: NonNullable<ReportFacts['signature']>; display: ReportFacts['display'] }) {
  const words = wordsIn(display.locale, 'report')
  const day = formatDay(signature.day, display)
  if (signature.answer !== 'signed') return <Said>{words(`unsigned/${signature.answer}`)}</Said>
  return (
    <View wrap={false}>
      {signature.bytes ? (
        <Image src={{ data: Buffer.from(signature.bytes), format: 'png' }} style={{ width: 240, height: 90, objectFit: 'contain' }} />
      ) : null}
      <Said>{signature.name ? words('signedBy', { name: signature.name, day }) : words('signedOn', { day })}</Said>
    </View>
  )
}

/** The report of one visit for the customer, on as many sheets as it takes. */
export function ReportPage({ facts }: { facts: ReportFacts }) {
  const { display, paper, head, photographs, signature } = facts
  const said = reportLines(facts)
  const { words } = said
  return (
    <Page
      size={paper === 'a4' ? 'A4' : 'LETTER'}
      style={{ fontFamily: FAMILY, fontSize: SIZE, color: INK, paddingTop: 36, paddingHorizontal: 44, paddingBottom: 54 }}
    >
      <Letterhead head={head} size={SIZE} />
      <Printed style={{ fontSize: 18, fontFamily: BOLD, marginTop: 8, marginBottom: 6 }}>{said.title}</Printed>
      <Lines lines={said.head} />
      <Part title={words('done')}>
        <Said>{said.outcome}</Said>
        {said.done.map((one, i) => (
          <Said key={i}>{`• ${one}`}</Said>
        ))}
      </Part>
      <Part title={words('measured')}>
        <Lines lines={said.measured} />
      </Part>
      {said.tank.length > 0 ? (
        <Part title={words('tankNow')}>
          <View wrap={false} style={{ flexDirection: 'row' }}>
            {said.drawing ? <BedFigure drawing={said.drawing} room={FIGURE} bare /> : null}
            <View style={{ flexGrow: 1, flexBasis: 0, paddingLeft: 10 }}>
              <Lines lines={said.tank} />
            </View>
          </View>
        </Part>
      ) : null}
      {said.settings.length > 0 ? (
        <Part title={words('settings')}>
          <Lines lines={said.settings} />
        </Part>
      ) : null}
      <Part title={words('next')}>
        <Said>{said.nextDue}</Said>
      </Part>
      {photographs.length > 0 ? <Photographs facts={facts} /> : null}
      {signature ? (
        <Part title={words('signature')}>
          <Signature signature={signature} display={display} />
        </Part>
      ) : null}
      <Text
        fixed
        style={{ position: 'absolute', left: 44, right: 44, bottom: 24, fontSize: SIZE }}
        render={({ pageNumber, totalPages }) =>
          printable(
            words('sheetOf', { firm: head.firmName, number: showWhole(pageNumber, display), count: showWhole(totalPages, display) }),
          )
        }
      />
    </Page>
  )
}
