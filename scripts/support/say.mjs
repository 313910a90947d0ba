// What the two commands say to a person: progress lines, and one plain sentence when something is missing.
const { ALMANAC_BEGUN } = process.env // run.mjs counts from before the packages were there
const begun = Number(ALMANAC_BEGUN ?? Date.now())

/** Prints a progress line with the seconds since the command began. On stderr: what a command answers may be piped on, as `roles-sql` is. */
export function say(message, print = console.error) {
  print(`[${((Date.now() - begun) / 1000).toFixed(1).padStart(5)} s] ${message}`)
}

/** An error whose message is one sentence for a person: what happened, what to do. It is printed without a stack. */
export class PlainError extends Error {}

const sentences = {
  ENOSPC: 'The disk is full: nothing more could be written. Free some space and run the same command again; data already stored is kept.',
  EDQUOT:
    'The disk quota is used up: nothing more could be written. Free some space and run the same command again; data already stored is kept.',
  EROFS: 'This folder is on a read-only disk: move the project to a place that can be written.',
}

/** The sentence for an error that a person can act on, or undefined for an unexpected one. */
export function plainSentence(error) {
  if (error instanceof PlainError) return error.message
  const code = error?.code ?? error?.cause?.code
  if (code === '53100' || /no space left on device/i.test(String(error?.message))) return sentences.ENOSPC
  if (code === 'EACCES' && error.path) return `No permission to use ${error.path}: run the command as the user who owns this folder.`
  return sentences[code]
}

/** Prints what went wrong (a sentence when there is one, else the whole error) and sets the exit code. */
export function tellError(error) {
  console.error(plainSentence(error) ?? error)
  process.exitCode = 1
}
