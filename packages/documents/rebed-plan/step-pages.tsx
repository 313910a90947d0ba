import { BESIDES } from '@almanac/softener/kit/kit-supply-lines'
import type { ProcedureStep } from '@almanac/softener/procedure/procedure-types'
import { showWhole } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { Page, Text, View } from '@react-pdf/renderer'
import { Fragment } from 'react'
import { printable } from '../print/printable-text.ts'
import { BOLD, INK, LEADING, LINE, Printed, SOFT, sheet } from '../print/printed.tsx'
import { TickBox } from '../print/tick-box.tsx'
import { TitleBlock } from '../print/title-block.tsx'
import { titleCells } from './first-page.tsx'
import type { MadePlan } from './make-plan.ts'
import { bodyText, type PaperStep, paperSteps, STEP, setColumns } from './step-columns.ts'

/** Widths of a column and what it may hold as estimated, points; A4 is narrower and higher than US letter. Tests count the sheets. */
const COLUMN = { LETTER: { width: 272, height: 596 }, A4: { width: 263, height: 651 } } as const

/** Sheets 2 and 3: reasons to stop, then every step with its cautions before it and a box to tick. */
export function StepPages({ plan }: { plan: MadePlan }) {
  const { facts, procedure, briefs, words, paper, hazards } = plan
  const steps = paperSteps(procedure.steps, briefs, facts.display, hazards)
  const { width, height } = COLUMN[paper]
  const [first, ...others] = steps
  const bring = plan.kit.ok
    ? plan.kit.value.lines
        .filter((line) => BESIDES.some((item) => item === line.item))
        .map((line) => line.text)
        .join('; ')
    : ''
  const { fontSize, columns } = setColumns(others, width, [height, height, height, height])
  return (
    <>
      {([2, 3] as const).map((number) => (
        <Page key={number} size={paper} style={sheet.page}>
          <View style={{ flexDirection: 'row', justifyContent: 'space-between', alignItems: 'flex-end' }}>
            <Printed style={{ fontSize: 14, fontFamily: BOLD }}>{words('stepsTitle')}</Printed>
            <Printed style={{ color: SOFT }}>
              {words('stepsLead', { count: showWhole(steps.length, facts.display), minutes: showWhole(procedure.minutes, facts.display) })}
            </Printed>
          </View>
          {number === 2 && bring ? (
            <Printed style={{ fontSize: 8.4 }} lines={2}>
              {words('bring', { items: bring })}
            </Printed>
          ) : null}
          {plan.tank ? <Printed style={{ fontSize: 8.4, fontFamily: BOLD }}>{plan.tank}</Printed> : null}
          {number === 2 && first ? <StopBox step={first} cases={stopCases(procedure.steps[0])} words={words} /> : null}
          <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
            {columns.slice(2 * number - 4, 2 * number - 2).map((part, i) => (
              <View key={part[0]?.number ?? -i} style={{ width }}>
                {part.map((step) => (
                  <Step key={step.number} step={step} fontSize={fontSize} words={words} />
                ))}
              </View>
            ))}
          </View>
          <Printed style={{ fontSize: 8.4, fontFamily: BOLD, marginTop: 'auto', marginBottom: 3 }}>{words('deferral')}</Printed>
          <View>
            <TitleBlock cells={titleCells(plan, number)} />
          </View>
        </Page>
      ))}
    </>
  )
}

/** The reasons to stop, in words; the answer that none was found is no reason. */
function stopCases(step: ProcedureStep | undefined): string[] {
  const choices = step?.asks.find((ask) => ask.id === 'stop-case')?.choices ?? []
  return choices.filter((one) => one.value !== 'none').map((one) => one.label)
}

/** The first step, which comes before unloading: each reason to stop with its own box, and what else to look at on the way in. */
function StopBox({ step, cases, words }: { step: PaperStep; cases: readonly string[]; words: Words<'plan'> }) {
  return (
    <View style={{ borderWidth: 1.4, borderColor: INK, paddingVertical: 3, paddingHorizontal: 6, marginTop: 2, marginBottom: 4 }}>
      <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
        <Printed style={{ fontFamily: BOLD, fontSize: 9 }}>{`${step.number}  ${words('stopWhen', { step: step.title })}`}</Printed>
        <Printed style={{ fontSize: 7.5, color: SOFT }}>{words('minutes', { minutes: `${step.minutes}` })}</Printed>
      </View>
      <View style={{ flexDirection: 'row', flexWrap: 'wrap' }}>
        {cases.map((one) => (
          <View key={one} style={{ flexDirection: 'row', marginRight: 10 }}>
            <TickBox size={7} />
            <Printed style={{ fontSize: 8.4 }}>{one}</Printed>
          </View>
        ))}
      </View>
      {step.cautions.map((caution) => (
        <Printed key={caution.text} style={{ fontSize: 8.4 }} lines={1}>{`${caution.word}: ${caution.text}`}</Printed>
      ))}
    </View>
  )
}

function Step({ step, fontSize, words }: { step: PaperStep; fontSize: number; words: Words<'plan'> }) {
  return (
    <View
      style={{ flexDirection: 'row', borderTopWidth: STEP.rule, borderColor: LINE, paddingTop: STEP.above, paddingBottom: STEP.below }}
      wrap={false}
    >
      <TickBox size={STEP.box - 5} />
      <View style={{ flexGrow: 1, flexBasis: 0 }}>
        <View style={{ flexDirection: 'row' }}>
          <View style={{ flexGrow: 1, flexBasis: 0 }}>
            <Printed style={{ fontSize, fontFamily: BOLD }}>{`${step.number}  ${step.title}`}</Printed>
          </View>
          <Printed style={{ fontSize: fontSize - 1, color: SOFT, flexShrink: 0 }}>
            {words('minutes', { minutes: `${step.minutes}` })}
          </Printed>
        </View>
        {step.cautions.length > 0 ? (
          <View style={{ borderLeftWidth: 2, borderColor: INK, paddingLeft: STEP.bar - 2 }}>
            <Text style={{ fontSize, lineHeight: LEADING }}>
              {step.cautions.map((caution) => (
                <Fragment key={caution.text}>
                  <Text style={{ fontFamily: BOLD }}>{`${printable(caution.word)}: `}</Text>
                  {`${printable(caution.text)} `}
                </Fragment>
              ))}
            </Text>
          </View>
        ) : null}
        <Printed style={{ fontSize }}>{bodyText(step)}</Printed>
      </View>
    </View>
  )
}
