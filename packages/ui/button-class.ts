/** `ink` the one main action, `line` another action, `quiet` a lesser one without frame, `danger` one that takes something away. */
export type ButtonKind = 'ink' | 'line' | 'quiet' | 'danger'

const kinds: Record<ButtonKind, string> = {
  ink: 'border-ink bg-ink text-paper font-semibold hover:bg-ink/85',
  line: 'border-ink bg-transparent text-ink hover:bg-wash',
  quiet: 'border-transparent bg-transparent text-ink underline decoration-edge underline-offset-4 hover:decoration-ink hover:bg-wash',
  danger: 'border-danger bg-transparent text-danger font-semibold hover:bg-danger hover:text-paper',
}

/** Classes shared by buttons and links that look like buttons; paper has none. `wide` fills the column, as the main answer on the tablet does. */
export function buttonClass(kind: ButtonKind, wide = false): string {
  const shape = wide
    ? `w-full px-5 py-3 in-[.field]:py-4 ${kind === 'ink' ? 'justify-center text-center' : 'justify-start text-left'}`
    : 'justify-center px-3.5 py-1.5'
  return `inline-flex print:hidden min-h-control items-center gap-2 rounded-sheet border ${shape} ${kinds[kind]} disabled:opacity-50 aria-disabled:opacity-60 disabled:cursor-not-allowed`
}
