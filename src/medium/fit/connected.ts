/** The pore connection as a property that is absent when it is not known. */
export function connected(poreConnection: number | undefined): { poreConnection?: number } {
  return poreConnection === undefined ? {} : { poreConnection }
}
