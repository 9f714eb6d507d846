/** One way to make the bell sound. Whether it works on a given tablet is only known by trying. */
export interface Channel {
  /** To be called in a tap. Answers whether the channel may sound from now on. */
  unlock(): Promise<boolean>
  /** One stroke of the bell, unless it is no longer wanted when the channel is ready. Answers whether it could sound. */
  strike(stillWanted: () => boolean): Promise<boolean>
  hush(): void
}
