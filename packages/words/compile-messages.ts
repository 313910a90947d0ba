import compile from 'icu-minify/compile'
import type { CompiledMessage } from 'icu-minify/format'

type Rooms<Message> = Readonly<Record<string, Readonly<Record<string, Message>>>>

/** A message as data: the compiler's own objects have no prototype, and no page may be handed those. */
const asData = (text: string): CompiledMessage => JSON.parse(JSON.stringify(compile(text))) as CompiledMessage

/** Messages as pages bring them: read from ICU's syntax beforehand, so that no browser has to carry its reader. */
export const compileMessages = (catalogue: Rooms<string>): Rooms<CompiledMessage> =>
  Object.fromEntries(
    Object.entries(catalogue).map(([room, said]) => [
      room,
      Object.fromEntries(Object.entries(said).map(([key, text]) => [key, asData(text)])),
    ]),
  )
