/** The notices of one window, in order: a bed has each of them once. */
export const notices = ['due-window', 'due-window-2', 'due-window-3'] as const
export type Notice = (typeof notices)[number]

/** Pairs of a notice and what follows it, for a firm that sends so many of them at the most. */
export const furtherNotices = (most: number): { after: Notice; notice: Notice }[] =>
  notices.slice(1, most).map((notice, i) => ({ after: notices[i] as Notice, notice }))

/** Which notice of its window it is, from 1; null where somebody asked to be asked again. */
export function noticeNumber(notice: string): number | null {
  const place = (notices as readonly string[]).indexOf(notice)
  return place < 0 ? null : place + 1
}
