export interface Ids {
  /** A new uuidv7, greater than every earlier one of this page. */
  next(): string
}
