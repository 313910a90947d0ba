/** Classes shared by one-line controls: a ruled box on the paper, red and thicker when wrong. */
export const controlClass =
  'min-h-control w-full rounded-sheet border border-edge bg-sheet px-2.5 py-1.5 text-base text-ink placeholder:text-soft ' +
  'aria-invalid:border-2 aria-invalid:border-danger disabled:bg-wash disabled:text-soft read-only:not-[select]:bg-wash'
