import type { RunModel } from '../run-model'

/** Finishes a step and stops its bell, in this order: what is not accepted leaves the bell alone. */
export async function finishWithClock(
  run: RunModel,
  step: string,
  clock: { readonly timer: string } | null,
  more: { readonly saw?: string; readonly toolRpm?: number; readonly checkedBy?: string } = {},
): Promise<void> {
  const finished = await run.act({ do: 'finish-step', step, ...more })
  if (finished && clock !== null) await run.handle.intend({ do: 'acknowledge-timer', timer: clock.timer })
}
