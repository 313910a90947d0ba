type Tx = { $queryRaw: (parts: TemplateStringsArray) => Promise<unknown> }
export const lock = (tx: Tx) => tx.$queryRaw`select 1 from job for update`
