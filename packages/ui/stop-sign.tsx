/** The sign that work has stopped: an octagon with a bar, known by its shape without its color. */
export function StopSign() {
  return (
    <svg aria-hidden="true" width="38" height="38" viewBox="0 0 38 38" className="shrink-0 fill-none stroke-danger stroke-[3]">
      <path d="M12 2 h14 l10 10 v14 l-10 10 h-14 l-10 -10 v-14z M12 19 h14" />
    </svg>
  )
}
