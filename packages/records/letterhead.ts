/** What heads a company's papers. The address and the licence are lines; `logo` is in the store under `id`, its size in pixels. */
export type Letterhead = {
  firmName: string
  telephone: string | null
  address: string | null
  mail: string | null
  licence: string | null
  logo: { id: string; width: number; height: number } | null
}

/** The most lines that an address and a licence have on a paper. */
export const HEAD_LINES = { address: 4, licence: 2 } as const

const linesOf = (text: string | null): string[] => (text ?? '').split('\n').flatMap((line) => line.trim() || [])

/** What stands beside the name, a line each: the address, where to call and write, the licence. */
export const headLines = ({ address, telephone, mail, licence }: Omit<Letterhead, 'firmName' | 'logo'>): string[] => [
  ...linesOf(address).slice(0, HEAD_LINES.address),
  ...[telephone, mail].flatMap((one) => one ?? []),
  ...linesOf(licence).slice(0, HEAD_LINES.licence),
]

/** What heads a paper, with the logo's own bytes. */
export type PrintedHead = Omit<Letterhead, 'logo'> & { logo: { png: Uint8Array; width: number; height: number } | null }
