import type { Failure } from '@almanac/contract/shared'

/** What is said where the server cannot be reached, in the language of the page: said once for it, since failures are read outside of its parts too. */
let unreachable = ''
export function sayUnreachable(sentence: string): void {
  unreachable = sentence
}

/** What went wrong, for a person and for the screen. A request that never arrived counts as unavailable. */
export function readFailure(error: unknown): Failure & { message: string } {
  const data = (error as { data?: Partial<Failure> } | null)?.data
  if (data?.code && error instanceof Error)
    return {
      message: error.message,
      code: data.code,
      retryable: data.retryable ?? false,
      requestId: data.requestId ?? '',
      detail: data.detail ?? {},
    }
  return {
    code: 'unavailable',
    retryable: true,
    requestId: '',
    detail: {},
    message: unreachable,
  }
}

/** The version that a record has by now, as the answer to a conflict says; 0 where it says none. */
export function versionNow({ detail }: Failure): number {
  return typeof detail.currentVersion === 'number' ? detail.currentVersion : 0
}
