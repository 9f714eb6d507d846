interface Stratum {
  /** The phase it belongs to. */
  readonly letter: string
  readonly massUg: number
}

export interface CupContents {
  /** What is in, from the bottom up. */
  readonly strata: readonly Stratum[]
  /** The reading on the balance, not recorded yet, lying on top. */
  readonly liveUg?: number | undefined
  /** What the vessel shall hold in the end; nought where the plan names none. */
  readonly targetUg: number
  readonly capacityUg?: number | undefined
}

interface CupBand {
  readonly letter: string
  readonly pattern: CupPattern
  readonly topPx: number
  readonly heightPx: number
}

type CupPattern = 'plain' | 'hatched' | 'dotted'

/** The target line stands here, as a part of the inside. */
export const targetPart = 0.76
/** From this part of the capacity upward the cap is drawn. */
const nearlyFull = 0.8
const patterns = ['plain', 'hatched', 'dotted'] as const

/** Plain for A, hatched for B, dotted for C, and round again; what has no letter is plain. */
export const patternOf = (letter: string): CupPattern => {
  const place = (letter.toUpperCase().codePointAt(0) ?? 65) - 65
  return patterns[place >= 0 && place < 26 ? place % 3 : 0] ?? 'plain'
}

/**
 * The inside of a cup: heights by mass, the target at 76 % of the inside, and nothing above the brim. Without a target
 * the capacity stands for the brim, and without that the contents fill to the line. Distances in px from the brim.
 */
export const cupLevels = (contents: CupContents, insidePx: number) => {
  const { strata, targetUg, capacityUg } = contents
  const liveUg = Math.max(contents.liveUg ?? 0, 0)
  const recordedUg = strata.reduce((sum, { massUg }) => sum + massUg, 0)
  const heldUg = recordedUg + liveUg
  const lineUg = targetUg > 0 ? targetUg : (capacityUg ?? 0) > 0 ? (capacityUg ?? 0) * targetPart : Math.max(heldUg, 1)
  const levelPx = (massUg: number) => insidePx * (1 - Math.min((massUg / lineUg) * targetPart, 1))

  const bands: CupBand[] = []
  let belowUg = 0
  for (const { letter, massUg } of strata) {
    const bottomPx = levelPx(belowUg)
    belowUg += massUg
    const topPx = levelPx(belowUg)
    const under = bands.at(-1)
    if (under?.letter === letter)
      bands[bands.length - 1] = { ...under, topPx, heightPx: under.heightPx + bottomPx - topPx }
    else bands.push({ letter, pattern: patternOf(letter), topPx, heightPx: bottomPx - topPx })
  }
  const livePx = levelPx(heldUg)
  const capUg = capacityUg ?? 0
  const capNear = capUg > 0 && Math.max(heldUg, targetUg) >= capUg * nearlyFull && (capUg / lineUg) * targetPart <= 1
  return {
    bands: bands.filter(({ heightPx }) => heightPx > 0),
    live: liveUg > 0 ? { topPx: livePx, heightPx: levelPx(recordedUg) - livePx } : undefined,
    surfacePx: heldUg > 0 ? livePx : undefined,
    targetPx: targetUg > 0 ? levelPx(targetUg) : undefined,
    capacityPx: capNear ? levelPx(capUg) : undefined,
  }
}

/** Where the parts of a cup stand in a picture of this size: rim 5.5 % of the height, wall, handle on the right. */
export const cupShape = (widthPx: number, heightPx: number) => {
  const rimPx = Math.max(heightPx * 0.055, 6)
  const wallPx = widthPx * 0.77
  const lip = widthPx * 0.04
  const taper = wallPx * 0.03
  const round = heightPx * 0.08
  const base = heightPx - 1.5
  const left = lip
  const right = left + wallPx
  const wall =
    `M${left} ${rimPx - 1}L${left + taper} ${base - round}Q${left + taper + 1} ${base} ${left + taper + round} ${base}` +
    `H${right - taper - round}Q${right - taper - 1} ${base} ${right - taper} ${base - round}L${right} ${rimPx - 1}`
  const reach = widthPx - right - 1.5
  const handle = (inset: number) => {
    const top = heightPx * 0.18 + inset
    const bottom = heightPx * 0.72 - inset
    const out = right + reach - inset
    const bow = Math.min(reach * 0.75, (bottom - top) / 3)
    return (
      `M${right} ${top}H${out - bow}Q${out} ${top} ${out} ${top + bow}` +
      `V${bottom - bow}Q${out} ${bottom} ${out - bow} ${bottom}H${right - taper * 0.5}`
    )
  }
  return {
    rim: { xPx: 0, widthPx: right + lip, heightPx: rimPx },
    wall,
    handles: [handle(0), handle(reach * 0.42)],
    inside: { leftPx: left, rightPx: right, topPx: rimPx, heightPx: base - rimPx - 2, middlePx: (left + right) / 2 },
  }
}
