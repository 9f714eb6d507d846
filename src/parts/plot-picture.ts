export interface XY {
  readonly x: number
  readonly y: number
}

export interface PlotAxis {
  /** What is measured, with its unit: head of the table, and at the axis. */
  readonly label: string
  readonly ticks: 'number' | 'time'
  readonly format: (value: number) => string
}

/** Everything of a plot but its size. Moments are ms UTC. */
export interface PlotPicture {
  readonly x: PlotAxis
  readonly y: PlotAxis
  /** What was read, in order; a strong one is the last word. */
  readonly points: readonly (XY & { readonly text?: string; readonly strong?: boolean })[]
  /** Through what was read. */
  readonly curve?: readonly XY[] | undefined
  /** What is to come: dashed, with how sure it is round it. */
  readonly ahead?: readonly XY[] | undefined
  readonly band?: readonly { readonly x: number; readonly low: number; readonly high: number }[] | undefined
  /** What is aimed at: a window of y, open at one end where that is absent. */
  readonly zone?: { readonly from?: number; readonly to?: number; readonly text?: string } | undefined
  /** From when to when a value will be reached. */
  readonly reach?: { readonly y: number; readonly from: number; readonly to: number; readonly text: string } | undefined
  /**
   * One addition more: how far along x it goes, and what it should lead to. Without `y` nobody can tell yet; `note` is
   * the fine print of `leadsTo`.
   */
  readonly step?:
    | {
        readonly from: XY
        readonly toX: number
        readonly y?: number | undefined
        readonly text: string
        readonly leadsTo?: string | undefined
        readonly note?: string | undefined
      }
    | undefined
  /** Moments at which something was done. */
  readonly marks?: readonly { readonly x: number; readonly text: string }[] | undefined
}
