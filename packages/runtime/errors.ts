/** Every way a request can fail. `retryable` says whether the same request may succeed later without a change. */
export const ERROR_CODES = {
  invalid: { status: 400, retryable: false },
  unauthenticated: { status: 401, retryable: false },
  forbidden: { status: 403, retryable: false },
  'not-found': { status: 404, retryable: false },
  conflict: { status: 409, retryable: false },
  'version-conflict': { status: 409, retryable: false },
  'too-large': { status: 413, retryable: false },
  'command-reused': { status: 422, retryable: false },
  'rate-limited': { status: 429, retryable: true },
  unavailable: { status: 503, retryable: true },
  misconfigured: { status: 500, retryable: false },
  unexpected: { status: 500, retryable: true },
} as const

export type ErrorCode = keyof typeof ERROR_CODES

/** What a person may see beside the message: ids, versions, values of their own company. Never a stack. */
export type ErrorDetail = Record<string, unknown>

/** A sentence that can be said in the language of a locale (BCP 47). */
export type Spoken = (locale: string) => string

/** The one base error. `message` is for a person, in English: what happened, what was kept, what to do. */
export class AppError extends Error {
  readonly code: ErrorCode
  readonly detail: ErrorDetail
  /** The same sentence in other languages, where it has them. */
  readonly spoken: Spoken | null

  constructor(code: ErrorCode, said: string | Spoken, detail: ErrorDetail = {}, cause?: unknown) {
    super(typeof said === 'string' ? said : said('en'), cause === undefined ? undefined : { cause })
    this.name = 'AppError'
    this.code = code
    this.detail = detail
    this.spoken = typeof said === 'string' ? null : said
  }

  get status(): number {
    return ERROR_CODES[this.code].status
  }

  get retryable(): boolean {
    return ERROR_CODES[this.code].retryable
  }
}

/** The answer for a record that does not exist, or belongs to another company: the same for both. */
export function notFound(what: string): AppError {
  return new AppError('not-found', `There’s no such ${what} in this company. Nothing was changed; go back and open it from the list.`)
}
