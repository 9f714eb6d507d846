/** The keys of all entries of one stream: see `keyOf`. */
export const ofStream = (stream: string): IDBKeyRange => IDBKeyRange.bound([stream], [stream, []])
