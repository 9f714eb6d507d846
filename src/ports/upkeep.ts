/** What can be asked of the room that both copies live in. */
export interface Upkeep {
  /** Asks the browser not to clear this origin when space is short; the answer shows in the storage state. */
  askToKeep(): Promise<void>
  /** Deletes both copies and reloads. Nothing is deleted while another page of the app is open. */
  eraseEverything(): Promise<void>
  /** The last deletion did not happen, because another page was open. */
  readonly eraseFailed: boolean
}
