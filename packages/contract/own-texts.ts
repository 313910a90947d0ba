import { channels } from '@almanac/records/channel'
import { languages } from '@almanac/records/language'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, SeenVersion, Version } from './shared.ts'

const which = { channel: z.enum(channels), language: z.enum(languages) }
/** As typed, with names to fill in. */
const typed = { subject: z.string().max(300), body: z.string().max(4000) }

export const TextLength = z.object({ characters: z.number().int(), parts: z.number().int(), wide: z.string().nullable() })
export type TextLength = z.infer<typeof TextLength>

const ReminderText = z.object({
  ...which,
  /** 0 where the company never wrote one. */
  version: SeenVersion,
  /** The company's own; null where the standard one holds. */
  own: z.object(typed).nullable(),
  standard: z.object(typed),
  /** What can be filled in, and what each is. */
  names: z.array(z.object({ name: z.string(), is: z.string() })),
})
export type ReminderText = z.infer<typeof ReminderText>

export const SaveTextInput = command({ ...which, version: SeenVersion, ...typed })
export type SaveTextInput = z.infer<typeof SaveTextInput>
export const StandardTextInput = command({ ...which, version: Version })
export type StandardTextInput = z.infer<typeof StandardTextInput>

/** A bed, or the first one of a site; without both it is filled in with made-up facts and a long name. */
export const PreviewTextInput = z.object({ ...which, ...typed, bedId: Id.nullable(), siteId: Id.nullable() })
export type PreviewTextInput = z.infer<typeof PreviewTextInput>

/** A text filled in, or what is wrong with it and where. */
const TextPreview = z.object({
  subject: z.string().nullable(),
  body: z.string().nullable(),
  wrong: z.object({ field: z.enum(['subject', 'body']), sentence: z.string() }).nullable(),
  text: TextLength.nullable(),
})
export type TextPreview = z.infer<typeof TextPreview>

export const ownTexts = {
  texts: oc.route({ method: 'GET', path: '/reminders/texts' }).output(z.object({ texts: z.array(ReminderText) })),
  saveText: oc
    .route({ method: 'POST', path: '/reminders/texts' })
    .input(SaveTextInput)
    .output(z.object({ version: Version })),
  standardText: oc
    .route({ method: 'POST', path: '/reminders/texts/standard' })
    .input(StandardTextInput)
    .output(z.object({ version: Version })),
  /** Asked in a body: a text is longer than an address. */
  previewText: oc.route({ method: 'POST', path: '/reminders/texts/preview' }).input(PreviewTextInput).output(TextPreview),
}
