import { languageOf } from '@almanac/records/language'
import type { GuidePhotographKind } from '@almanac/records/picture-kind'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import type { ReactNode } from 'react'
import type { ShownGuide } from './shown-guide.ts'

/** What went wrong with what was sent, or that it is here; nothing for what this page doesn’t say. */
export function PhotographSaid({ said, words }: { said?: string; words: Words<'ownerSteps'> }) {
  if (said === 'kept') return <Notice kind="done">{words('said/kept')}</Notice>
  if (said === 'no-picture' || said === 'too-large' || said === 'too-many') return <Notice kind="mind">{words(`said/${said}`)}</Notice>
  return said === 'missing' ? <Notice kind="mind">{words('missing')}</Notice> : null
}

/** `at` is where the page goes on. */
type Props = { guide: ShownGuide; kind: GuidePhotographKind; at: string; label: string; children?: ReactNode }

/** One photograph to choose or take, sent by its button. Works without scripts. */
export function PhotographForm({ guide, kind, at, label, children }: Props) {
  const words = wordsIn(guide.locale, 'ownerSteps')
  return (
    <form method="post" encType="multipart/form-data" action={`${guide.sendTo}/photograph`} className="flex flex-col gap-3">
      <input type="hidden" name="l" value={languageOf(guide.locale)} />
      <input type="hidden" name="kind" value={kind} />
      <input type="hidden" name="at" value={at} />
      {children}
      <label className="flex flex-col gap-2 font-medium">
        {label}
        <input
          type="file"
          name="picture"
          accept="image/jpeg,image/png,image/webp"
          required
          className="min-h-control w-full rounded-sheet border border-edge p-3 font-normal"
        />
      </label>
      <Button kind="ink" type="submit" wide>
        {words('sendPhoto')}
      </Button>
    </form>
  )
}

/** The photographs that help the office from afar. */
export function Photographs({ guide, said }: { guide: ShownGuide; said?: string }) {
  const words = wordsIn(guide.locale, 'ownerSteps')
  const kinds = ['label', 'valve', 'bypass'] as const
  return (
    <>
      <div>
        <h1 className="text-h1 font-semibold">{words('photosHead')}</h1>
        <p className="mt-1">{words('photosLead')}</p>
      </div>
      <PhotographSaid said={said} words={words} />
      {kinds.map((kind) => (
        <section key={kind} className="border-t border-line pt-4">
          {guide.photographs.includes(kind) ? <p className="text-done">{words(`here/${kind}`)}</p> : null}
          <PhotographForm guide={guide} kind={kind} at="photographs" label={words(`kind/${kind}`)} />
        </section>
      ))}
      <a href={`?l=${languageOf(guide.locale)}`} className="py-3 text-center underline underline-offset-4">
        {words('back')}
      </a>
    </>
  )
}
