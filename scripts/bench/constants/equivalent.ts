/** Constants whose change nobody could notice, with the reason; they are named, and counted apart. `code` is the line they stand on. */
export type Equivalent = { file: string; code: string; value: number; why: string }

export const EQUIVALENT: readonly Equivalent[] = []
