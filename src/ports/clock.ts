/** The only source of time. Everything that waits compares a deadline with `nowMs`, so a sleeping tablet misses none. */
export interface Clock {
  /** Wall clock, ms since 1970 UTC. */
  nowMs(): number
  /** Minutes that local time is ahead of UTC at this moment. */
  offsetMinutes(): number
  /** Calls back when the wall clock was moved. Answers a function that ends it. */
  onJump(callback: (jump: ClockJump) => void): () => void
}

export interface ClockJump {
  /** What the wall clock would have shown, had it not moved; ms UTC. */
  readonly fromMs: number
  /** What it shows; ms UTC. */
  readonly toMs: number
  /** The page was hidden meanwhile and time went forward: a tablet that slept looks the same as a clock put forward. */
  readonly maybeSlept: boolean
}
