/**
 * Every state that an editor has had, as far back as it goes. States are immutable, so that keeping one costs nothing
 * but what has changed in it. `run` names the field that is being typed in: one run is one thing to undo.
 */
export interface History<T> {
  readonly now: T
  readonly past: Stack<T>
  readonly future: Stack<T>
  readonly run: string | null
}

type Stack<T> = { readonly top: T; readonly rest: Stack<T> } | null

export const startHistory = <T>(now: T): History<T> => ({ now, past: null, future: null, run: null })

/** A new state; within one run it takes the place of the last one. What was undone before it is gone. */
export function record<T>({ now, past, run: before }: History<T>, next: T, run: string | null = null): History<T> {
  const isSameRun = run !== null && run === before
  return { now: next, past: isSameRun ? past : { top: now, rest: past }, future: null, run }
}

/** Ends a run: what is typed from here on is undone by itself. */
export const endRun = <T>(history: History<T>): History<T> =>
  history.run === null ? history : { ...history, run: null }

export function undo<T>(history: History<T>): History<T> {
  const { now, past, future } = history
  return past === null ? history : { now: past.top, past: past.rest, future: { top: now, rest: future }, run: null }
}

export function redo<T>(history: History<T>): History<T> {
  const { now, past, future } = history
  return future === null ? history : { now: future.top, past: { top: now, rest: past }, future: future.rest, run: null }
}
