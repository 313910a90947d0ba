import { useTranslations } from 'use-intl/react'
import type { FieldRoom, Room } from './catalogue.ts'
import type { Words } from './words.ts'

/** The words of a room in the language of whoever looks; under the provider of the office's or of the tablet's pages. */
export const useWords = useTranslations as <Name extends Room>(room: Name) => Words<Name>

/** The same for what the tablet shows too: only its own rooms are loaded there. */
export const useFieldWords: <Name extends FieldRoom>(room: Name) => Words<Name> = useWords
