import type { Command } from '@almanac/database/run-command'

const CHUNK = 500

/** Asks for some beds' forecasts anew, a few hundred a task so that each stays short. Beds that are gone lose theirs. */
export async function forecastBeds(command: Command, bedIds: readonly string[], cause: string): Promise<void> {
  for (let start = 0; start < bedIds.length; start += CHUNK)
    await command.enqueue('forecast-beds', { bedIds: bedIds.slice(start, start + CHUNK), cause })
}
