/** Keeps the screen on through a run. */
export interface Awake {
  /** Call it in a tap: some browsers grant nothing else. */
  keep(): void
  release(): void
  /** Calls back after each change while the screen is to be kept on. Answers a function that ends it. */
  onChange(callback: (state: AwakeState) => void): () => void
}

/** `lost`: taken back (low power, page hidden), asked for again when the page is seen. `unavailable`: not in this browser. */
export type AwakeState = 'kept' | 'lost' | 'unavailable'
