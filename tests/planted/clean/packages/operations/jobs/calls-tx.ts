type Tx = { job: { findMany: () => Promise<unknown> } }
export const read = (tx: Tx) => tx.job.findMany()
