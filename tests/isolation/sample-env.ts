import { forgetConfig } from '@almanac/runtime/config'
import { vi } from 'vitest'
import type { Sample } from './sample-call.ts'

/** Sets the server up as a sample needs it while `work` runs. */
export async function setUpFor<T>({ env = {} }: Pick<Sample, 'env'>, work: () => Promise<T>): Promise<T> {
  const named = Object.entries(env)
  if (named.length === 0) return work()
  for (const [name, value] of named) vi.stubEnv(name, value)
  forgetConfig()
  try {
    return await work()
  } finally {
    vi.unstubAllEnvs()
    forgetConfig()
  }
}
