/** Which file: of which company, and the id of the record that it belongs to. No name that a person gave stands in it. */
export type FileName = { companyId: string; id: string }

/**
 * Where the companies' files lie. Nobody outside gets an address of it: a file is handed out by a route, to whom the record it belongs to may be shown. Each throws
 * `unavailable` where the store can't be reached.
 */
export type FileStore = {
  /** Writes a whole file; one that is there is replaced, and nobody ever reads half of it. */
  put(name: FileName, bytes: Uint8Array): Promise<void>
  /** The file's bytes; null for one that is not there. */
  get(name: FileName): Promise<Uint8Array | null>
  /** Takes a file away. One that is gone already is gone. */
  remove(name: FileName): Promise<void>
}

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** The key of a file: its company, then its id. Refuses what is no id, so that no name climbs out of its company's part. */
export function keyOf({ companyId, id }: FileName): string {
  if (!UUID.test(companyId) || !UUID.test(id)) throw new Error('a file is named by two ids')
  return `${companyId}/${id}`
}
