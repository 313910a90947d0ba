/** The states of an import. */
export const importStates = ['draft', 'queued', 'applying', 'applied', 'undone', 'failed'] as const
export type ImportState = (typeof importStates)[number]

/** What became of a row of the file. */
export const importRowStatuses = ['pending', 'created', 'updated', 'unchanged', 'problem'] as const
export type ImportRowStatus = (typeof importRowStatuses)[number]
