declare const __BUILD_ID__: string

/** Version and a hash of the sources: says which build a person has in front of them. */
export const buildId: string = __BUILD_ID__
