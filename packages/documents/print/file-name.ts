import { printable } from './printable-text.ts'

/** A file's name in plain letters: "rebed-plan-orchard-lane-14.pdf". */
export function fileNameOf(what: string, whose: string): string {
  const plain = printable(whose)
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60)
  return `${what}${plain ? `-${plain}` : ''}.pdf`
}
