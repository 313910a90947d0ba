import { countInSentence } from '@almanac/units/format-number'
import 'server-only'
import { AppError } from '@almanac/runtime/errors'

/** How many bytes a request may bring, by what it brings. A file has its own limit (`operations/imports/upload-limits`). */
export const BODY_BYTES = {
  /** A procedure's input. The largest that a screen sends, a close-out or a person's whole week, is under 20 kB. */
  procedure: 1024 * 1024,
  /** Signing in, a password, a name. */
  signIn: 16 * 1024,
  /** A customer's choice of one time. */
  arrival: 4 * 1024,
  /** An owner's photograph with its form: as telephones make them. */
  photograph: 12 * 1024 * 1024,
} as const

/** Deeper, or of more values, than any input here: parsing such a body costs many times its bytes. */
const MOST_DEPTH = 32
const MOST_VALUES = 50_000

const tooLarge = (most: number) =>
  new AppError(
    'too-large',
    `More than ${countInSentence(most / 1024)} kB were sent, more than we can read. Nothing was saved; send less at a time.`,
  )

/**
 * The body piece by piece, refused at the byte beyond `most`, whatever the header says of its length or leaves unsaid. What comes after a refusal is not
 * kept.
 */
export async function* piecesWithin(request: Request, most: number, refusal = tooLarge(most)): AsyncGenerator<Uint8Array> {
  if (Number(request.headers.get('content-length') ?? 0) > most) throw refusal
  if (!request.body) return
  let size = 0
  const reader = request.body.getReader()
  try {
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
      size += piece.value.byteLength
      if (size > most) throw refusal
      yield piece.value
    }
  } catch (error) {
    if (error instanceof AppError) throw error
    throw new AppError('invalid', 'The request was cut off. Nothing was saved; send it again.', {}, error)
  }
  // Not cancelled after a refusal: that would end the connection before the answer. The server's front cuts off what still comes.
}

/** The whole body, when it is no larger than `most` bytes. */
export async function bodyWithin(request: Request, most: number): Promise<Buffer> {
  const pieces: Uint8Array[] = []
  for await (const piece of piecesWithin(request, most)) pieces.push(piece)
  return Buffer.concat(pieces)
}

/** Refuses, before anything is made of it, a JSON text that is nested deeper or holds more values than an input can. */
function checkShape(text: string): void {
  let depth = 0
  let values = 1
  let quoted = false
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at)
    if (quoted) {
      if (sign === 92) at++
      else if (sign === 34) quoted = false
    } else if (sign === 34) quoted = true
    else if (sign === 44) values++
    else if (sign === 91 || sign === 123) {
      depth++
      values++
    } else if (sign === 93 || sign === 125) depth--
    if (depth > MOST_DEPTH || values > MOST_VALUES)
      throw new AppError('too-large', 'The request holds too many values, or is nested too deep. Nothing was saved; send less at a time.')
  }
}

/** The body as JSON, within the limits of size, depth and number of values; undefined for none. */
export async function jsonWithin(request: Request, most: number): Promise<unknown> {
  const type = request.headers.get('content-type')
  const text = (await bodyWithin(request, most)).toString('utf8')
  if (text === '') return undefined
  if (!type?.toLowerCase().startsWith('application/json'))
    throw new AppError('invalid', 'The content type isn’t JSON. Nothing was saved; send application/json.')
  checkShape(text)
  try {
    return JSON.parse(text)
  } catch {
    throw new AppError('invalid', 'The JSON is not complete. Nothing was saved; send it again.')
  }
}
