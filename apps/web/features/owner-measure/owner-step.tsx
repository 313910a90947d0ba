import { languageOf } from '@almanac/records/language'
import { Button } from '@almanac/ui/button'
import { CautionBox } from '@almanac/ui/caution-box'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import { PhotographForm, PhotographSaid } from './photograph-form.tsx'
import type { ShownGuide } from './shown-guide.ts'
import { WatchAnswer } from './watch-answer.tsx'

type Step = NonNullable<ShownGuide['step']>
type Said = Words<'ownerSteps'>

/** What a step asks of an owner. */
function Asks({ step, words }: { step: Step; words: Said }) {
  const ticks = step.asks.filter((ask) => ask.kind === 'confirm')
  return (
    <>
      {ticks.length > 0 ? (
        <fieldset className="flex flex-col gap-1">
          <legend className="mb-1 font-medium">{words('tick')}</legend>
          {ticks.map(({ id, label }) => (
            <Checkbox key={id} name={`ask/${id}`} value="yes" label={label} required />
          ))}
        </fieldset>
      ) : null}
      {step.asks
        .filter((ask) => ask.kind === 'choice')
        .map(({ id, label, choices }) => (
          <ChoiceGroup key={id} name={`ask/${id}`} label={label} choices={choices} required />
        ))}
    </>
  )
}

/** A hold point: nothing follows before the office has looked at the photograph. */
function Hold({ guide, step, words }: { guide: ShownGuide; step: Step; words: Said }) {
  if (!step.hold) return null
  const looking = guide.state === 'looking'
  const form = (
    <PhotographForm guide={guide} kind={step.hold} at="" label={words(looking ? 'another' : 'photo')}>
      {looking ? null : <Asks step={step} words={words} />}
    </PhotographForm>
  )
  return (
    <section className="flex flex-col gap-3 border-2 border-ink p-4">
      {looking ? (
        <>
          <Notice kind="said">{words('looking')}</Notice>
          <p>{words('lookingMore')}</p>
          <WatchAnswer />
          <a href={`?l=${languageOf(guide.locale)}`} className="py-3 underline underline-offset-4">
            {words('lookAgain')}
          </a>
        </>
      ) : (
        <>
          <h2 className="text-h2 font-semibold">{words('holdHead')}</h2>
          <p>{words(`hold/${step.hold}`)}</p>
          {guide.toFix ? <Notice kind="mind">{words('toFix', { what: guide.toFix })}</Notice> : null}
          <p>{words('holdWait')}</p>
        </>
      )}
      {form}
    </section>
  )
}

/** One step a screen: its cautions first, then what to do, then what is asked, as for a crew. */
export function OwnerStepPage({ guide, step, said }: { guide: ShownGuide; step: Step; said?: string }) {
  const words = wordsIn(guide.locale, 'ownerSteps')
  const hazards = wordsIn(guide.locale, 'hazard')
  const language = languageOf(guide.locale)
  return (
    <>
      <p className="text-small text-soft">{words('count', { number: String(step.number), total: String(step.total) })}</p>
      <div>
        {step.cautions.map((caution) => (
          <CautionBox key={caution.text} kind={caution.kind} word={hazards(caution.kind)}>
            {caution.text}
          </CautionBox>
        ))}
      </div>
      <h1 className="text-h1 font-semibold">{step.title}</h1>
      {step.dose === null ? null : <p className="text-h1 font-semibold text-bead-ink">{step.dose}</p>}
      <p>{step.text}</p>
      {step.now ? <PhotographSaid said={said} words={words} /> : null}
      {step.now && step.hold ? <Hold guide={guide} step={step} words={words} /> : null}
      {step.now && !step.hold ? (
        <form method="post" action={`${guide.sendTo}/act`} className="flex flex-col gap-4">
          <input type="hidden" name="l" value={language} />
          <input type="hidden" name="do" value="next" />
          <input type="hidden" name="step" value={step.id} />
          <Asks step={step} words={words} />
          <Button kind="ink" type="submit" wide>
            {words('next')}
          </Button>
        </form>
      ) : null}
      <nav className="flex flex-wrap gap-x-6">
        {step.before ? (
          <a href={`?look=${step.before}&l=${language}`} className="py-3 underline underline-offset-4">
            {words('before')}
          </a>
        ) : null}
        {step.now ? (
          <a href={`?step=photographs&l=${language}`} className="py-3 underline underline-offset-4">
            {words('photosInstead')}
          </a>
        ) : (
          <a href={`?l=${language}`} className="py-3 underline underline-offset-4">
            {words('now')}
          </a>
        )}
      </nav>
    </>
  )
}
