/** The bell. It sounds only while the app is open and the tablet awake: no browser rings for a closed page. */
export interface Alarm {
  /** Browsers stay silent until a tap; call this in every tap that may be the first. */
  unlock(): void
  /** Rings until `stop` with the same id. */
  ring(id: string): void
  stop(id: string): void
  /** Sounds once, for the check before a batch. */
  test(): void
  readonly state: AlarmState
  /** Calls back after each change of state. Answers a function that ends it. */
  onChange(callback: (state: AlarmState) => void): () => void
}

/** `locked`: no tap yet. `broken`: the browser gives no sound on either channel. */
export type AlarmState = 'locked' | 'ready' | 'broken'
