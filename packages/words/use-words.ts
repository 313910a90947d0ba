import { useTranslations } from 'use-intl/react'
import type { Room } from './catalogue.ts'
import type { Words } from './words.ts'

/** The words of a room in the language of whoever looks; under the provider of the office's or of the tablet's pages, which has fewer rooms. */
export const useWords = useTranslations as <Name extends Room>(room: Name) => Words<Name>
