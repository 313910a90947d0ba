import { oneOf } from '@almanac/records/choices'
import { type GuideMeasure, guideMeasures } from '@almanac/records/guide-measure'
import { languageOf } from '@almanac/records/language'
import { acrossIn } from '@almanac/softener/identify/owner-measures'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import { TextInput } from '@almanac/ui/text-input'
import { formatLengthIn } from '@almanac/units/format'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import { OtherLanguages } from '@/client/other-languages'
import { telOf } from '@/client/phone-link'
import { OwnerEnding, RatherVisit } from './owner-endings.tsx'
import { OwnerStepPage } from './owner-step.tsx'
import { Photographs } from './photograph-form.tsx'
import type { ShownGuide } from './shown-guide.ts'
import { TankToMeasure } from './tank-to-measure.tsx'

type Said = Words<'ownerMeasure'>

/** The form for one measurement, below its drawing. Nothing is sent before its button is pressed. */
function Step({ guide, measure, said, words }: { guide: ShownGuide; measure: GuideMeasure; said?: string; words: Said }) {
  const next = guideMeasures[guideMeasures.indexOf(measure) + 1] ?? 'end'
  return (
    <>
      <div>
        <h1 className="text-h1 font-semibold">{words(`head/${measure}`)}</h1>
        <p className="mt-1">{words(`lead/${measure}`)}</p>
      </div>
      <TankToMeasure measure={measure} words={words} />
      {said === 'unread' || said === 'impossible' ? <Notice kind="mind">{words(said)}</Notice> : null}
      <form method="post" action={guide.sendTo} className="flex flex-col gap-4">
        <input type="hidden" name="l" value={languageOf(guide.locale)} />
        <input type="hidden" name="measure" value={measure} />
        <TextInput label={words(`field/${measure}`)} name="value" inputMode="decimal" maxLength={40} autoComplete="off" required />
        <ChoiceGroup
          label={words('unit')}
          name="unit"
          inline
          required
          choices={[
            { value: 'in', label: words('inches') },
            { value: 'cm', label: words('centimeters') },
          ]}
        />
        <Button kind="ink" type="submit">
          {words('send')}
        </Button>
      </form>
      <a href={`?step=${next}&l=${languageOf(guide.locale)}`} className="py-3 text-center underline underline-offset-4">
        {words('skip')}
      </a>
    </>
  )
}

/** What was sent, and what it means for the tank. */
function Kept({ guide, words }: { guide: ShownGuide; words: Said }) {
  const shown = (lengthIn: number) => formatLengthIn(lengthIn, guide)
  return guide.entries.map(({ measure, valueIn }) => (
    <Notice key={measure} kind="done">
      {measure === 'around'
        ? words('kept/around', { length: shown(valueIn), across: shown(Math.round(acrossIn(valueIn))) })
        : words('kept/height', { length: shown(valueIn) })}
    </Notice>
  ))
}

type Asked = { guide: ShownGuide; step?: string; said?: string }

/** An owner with a tape: one measurement after the other on a drawing of what stands before them, then what was sent. */
function Measuring({ guide, step, said }: Asked) {
  const { locale, entries } = guide
  const words = wordsIn(locale, 'ownerMeasure')
  const missing = guideMeasures.find((one) => !entries.some(({ measure }) => measure === one))
  const measure = step === 'end' ? null : (oneOf(guideMeasures, step) ?? missing ?? null)
  const link = (to: string, text: string) => (
    <a href={`?step=${to}&l=${languageOf(locale)}`} className="py-3 underline underline-offset-4">
      {text}
    </a>
  )
  return (
    <>
      {measure ? (
        <Step guide={guide} measure={measure} said={said} words={words} />
      ) : (
        <h1 className="text-h1 font-semibold">{entries.length > 0 ? words('thanks') : words('nothing')}</h1>
      )}
      <Kept guide={guide} words={words} />
      {measure ? null : (
        <>
          {entries.length > 0 ? <p className="text-lead">{words('done')}</p> : null}
          {link('around', words('again'))}
        </>
      )}
      {link('photographs', wordsIn(locale, 'ownerSteps')('photosInstead'))}
    </>
  )
}

/** What the link shows while it works, by how far the owner is. */
function Open({ guide, step, said }: Asked) {
  const over = guide.state === 'soft' || guide.state === 'visit'
  if (step === 'photographs' && !over) return <Photographs guide={guide} said={said} />
  if (guide.step) return <OwnerStepPage guide={guide} step={guide.step} said={said} />
  return guide.state === 'measuring' ? <Measuring guide={guide} step={step} said={said} /> : <OwnerEnding guide={guide} said={said} />
}

/** An owner’s page: measuring, photographs, the steps and how they end. Works without scripts. */
export function OwnerMeasure({ guide, step, said }: Asked) {
  const { telephone: phone, companyName, locale, open, state } = guide
  const words = wordsIn(locale, 'ownerMeasure')
  return (
    <main lang={languageOf(locale)} className="field mx-auto flex max-w-xl flex-col gap-5 px-5 py-8">
      <header className="flex flex-wrap items-baseline justify-between gap-x-6 border-b border-ink pb-2">
        <p className="font-semibold wrap-anywhere">{companyName}</p>
        {phone ? (
          <a href={telOf(phone)} className="py-3 underline underline-offset-4">
            {phone}
          </a>
        ) : null}
      </header>
      {open ? (
        <>
          <Open guide={guide} step={step} said={said} />
          <p className="text-soft">{phone ? words('call', { phone }) : words('callUs')}</p>
          {state === 'soft' || state === 'visit' ? null : <RatherVisit guide={guide} />}
        </>
      ) : (
        <>
          <h1 className="text-h1 font-semibold">{words('gone')}</h1>
          <p>{phone ? words('goneCall', { phone }) : words('goneCallUs')}</p>
        </>
      )}
      <OtherLanguages locale={locale} />
    </main>
  )
}
