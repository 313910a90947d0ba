import { guideEnds } from '@almanac/records/guide-state'
import { languageOf } from '@almanac/records/language'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import { wordsIn } from '@almanac/words/words-in'
import type { ShownGuide } from './shown-guide.ts'

/** Somebody comes instead, at any moment: folded, so that no thumb presses it in passing. */
export function RatherVisit({ guide }: { guide: ShownGuide }) {
  const words = wordsIn(guide.locale, 'ownerSteps')
  return (
    <details className="border-t border-line pt-2">
      <summary className="cursor-pointer py-3 underline underline-offset-4">{words('visitAsk')}</summary>
      <form method="post" action={`${guide.sendTo}/act`} className="flex flex-col gap-3">
        <input type="hidden" name="l" value={languageOf(guide.locale)} />
        <input type="hidden" name="do" value="visit" />
        <p>{words('visitSure')}</p>
        <Button type="submit" wide>
          {words('visitSend')}
        </Button>
      </form>
    </details>
  )
}

/** All steps are done: how is the water? */
function Asked({ guide, said }: { guide: ShownGuide; said?: string }) {
  const words = wordsIn(guide.locale, 'ownerSteps')
  return (
    <>
      <div>
        <h1 className="text-h1 font-semibold">{words('askedHead')}</h1>
        <p className="mt-1">{words('askedLead')}</p>
      </div>
      {said === 'missing' ? <Notice kind="mind">{words('missing')}</Notice> : null}
      <form method="post" action={`${guide.sendTo}/act`} className="flex flex-col gap-4">
        <input type="hidden" name="l" value={languageOf(guide.locale)} />
        <input type="hidden" name="do" value="ended" />
        <ChoiceGroup
          name="end"
          label={words('askedHead')}
          choices={guideEnds.map((end) => ({ value: end, label: words(`end/${end}`) }))}
          required
        />
        <Button kind="ink" type="submit" wide>
          {words('tell')}
        </Button>
      </form>
    </>
  )
}

/** Where the steps end: asked, soft, something wrong, or a visit. Each says who to call. */
export function OwnerEnding({ guide, said }: { guide: ShownGuide; said?: string }) {
  const { state, ended, left } = guide
  const words = wordsIn(guide.locale, 'ownerSteps')
  if (state === 'asked') return <Asked guide={guide} said={said} />
  const head = state === 'soft' ? words('softHead') : state === 'visit' ? words('visitHead') : words('troubleHead')
  return (
    <>
      <h1 className="text-h1 font-semibold">{head}</h1>
      {state === 'soft' ? <p>{words('softLead')}</p> : null}
      {state === 'trouble' && ended && ended !== 'soft' ? <p className="text-lead">{words(`trouble/${ended}`)}</p> : null}
      {left ? <p className="text-lead">{words(`left/${left.opening}`)}</p> : null}
      {left?.heaterOff ? <p className="text-lead">{words('heater')}</p> : null}
    </>
  )
}
