/** How far an archive of everything is. `removed`: its file was taken off the disk again, by age or because somebody was erased. */
export const exportStates = ['waiting', 'writing', 'ready', 'failed', 'removed'] as const
export type ExportState = (typeof exportStates)[number]
/** What people read of it. */
export const exportStateWords: Record<ExportState, string> = {
  waiting: 'Waiting',
  writing: 'Writing',
  ready: 'Ready',
  failed: 'Failed',
  removed: 'Removed',
}
