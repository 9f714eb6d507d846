/** Runs `work` when asked; asked again meanwhile, once more afterwards, however often. */
export function oneAtATime(work: () => Promise<void>): () => void {
  let running = false
  let again = false
  const run = async (): Promise<void> => {
    running = true
    do {
      again = false
      await work()
    } while (again)
    running = false
  }
  return () => {
    if (running) again = true
    else void run()
  }
}
