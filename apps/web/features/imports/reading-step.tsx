'use client'
import { Notice } from '@almanac/ui/notice'
import { ProgressLine } from '@almanac/ui/progress-line'
import { Section } from '@almanac/ui/section'
import { useQuiet } from './use-quiet.ts'

/** Before the first step: the file is being read, which goes on without this page. */
export function ReadingStep() {
  const quiet = useQuiet('reading')
  return (
    <Section title="Reading your file">
      <ProgressLine label="Reading" />
      <p className="max-w-[70ch] text-soft">
        The file has arrived. Its columns appear here in a few seconds; a long list takes a little longer. You can leave this page
        meanwhile.
      </p>
      {quiet ? (
        <Notice kind="mind">
          This takes longer than usual. If the background worker stopped, the reading starts again automatically within half a minute. You
          don’t have to send the file again.
        </Notice>
      ) : null}
    </Section>
  )
}
