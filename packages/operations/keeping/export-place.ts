import fs from 'node:fs/promises'
import path from 'node:path'
import { config } from '@almanac/runtime/config'

/** The comment is the bundler's: without it the build would look for the folder and take the whole repository along. */
export const archiveFolder = (companyId: string) => path.resolve(/* turbopackIgnore: true */ config().DATA_DIR, 'exports', companyId)

/** Where an archive lies; ids alone make its name, so no name of a person or a company stands on the disk. */
export const archiveFile = (companyId: string, exportId: string) => path.join(archiveFolder(companyId), `${exportId}.zip`)

/** Makes the folder of a company's archives, for the app's own user alone. */
export async function makeArchiveFolder(companyId: string): Promise<void> {
  await fs.mkdir(archiveFolder(companyId), { recursive: true, mode: 0o700 })
}

/** Takes archives off the disk, and what was half written of them. Those that are gone already are gone. */
export async function removeArchives(companyId: string, exportIds: string[]): Promise<void> {
  for (const id of exportIds) for (const end of ['', '.part']) await fs.rm(`${archiveFile(companyId, id)}${end}`, { force: true })
}
