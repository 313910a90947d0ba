import { AppError } from '@almanac/runtime/errors'
import type { ZxcvbnFactory } from '@zxcvbn-ts/core'

export const SHORTEST_PASSWORD = 10
export const LONGEST_PASSWORD = 128
/** What comes after so many characters makes no password easier to guess, and judging it takes time that grows with the square of the length: 1.6 s for 128, 0.4 s for 64. */
const JUDGED = 64

/** Of the library's scores 0 to 4: 2 is more than 10^6 guesses, and far more than the limits of sign-in allow in years. */
const LEAST_SCORE = 2

let judge: Promise<ZxcvbnFactory> | undefined

/** Lists of common passwords, names and words, keyboard rows, repeats, sequences and days, by the zxcvbn library. Megabytes of lists: loaded at the first question. */
async function loadJudge(): Promise<ZxcvbnFactory> {
  const [{ ZxcvbnFactory }, common, english] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
    import('@zxcvbn-ts/language-en'),
  ])
  return new ZxcvbnFactory({ dictionary: { ...common.dictionary, ...english.dictionary }, graphs: common.adjacencyGraphs })
}

/** Refuses a password that others use, that repeats itself, or that is made of what is `known` of the person. */
export async function refuseWeakPassword(password: string, known: string[] = []): Promise<void> {
  if (password.length < SHORTEST_PASSWORD || password.length > LONGEST_PASSWORD)
    throw new AppError(
      'invalid',
      `A password has ${SHORTEST_PASSWORD} to ${LONGEST_PASSWORD} characters. The old one still works; choose another.`,
    )
  const parts = known.flatMap((one) => [one, ...one.split(/[^\p{L}\p{N}]+/u)]).filter((one) => one.length > 2)
  judge ??= loadJudge()
  if ((await judge).check(password.slice(0, JUDGED), parts).score < LEAST_SCORE)
    throw new AppError(
      'invalid',
      'This password is easy to guess: it’s common, repeats itself, or uses your name or email. The old one still works; choose three or four unrelated words.',
    )
}
