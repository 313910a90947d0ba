'use client'
import { useDisplay } from '@almanac/ui/display'
import { useWords } from '@almanac/words/use-words'
import type { CrewSpeaking } from './crew-words.ts'

/** How people's work and hours are said, in the language of whoever looks. */
export function useCrewSpeaking(): CrewSpeaking {
  return { display: useDisplay(), words: useWords('crewWork') }
}
