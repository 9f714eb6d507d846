/** A sheet of labels as it is sold, mm. Labels are counted row by row from the top left. */
export interface JarSheet {
  readonly id: string
  readonly name: string
  readonly page: 'A4' | 'Letter'
  readonly columns: number
  readonly rows: number
  readonly widthMm: number
  readonly heightMm: number
  readonly gapMm: number
}

/** ISO 216 and ANSI/ASME Y14.1, mm. */
export const pageMm = { A4: [210, 297], Letter: [215.9, 279.4] } as const

export const jarSheets: readonly JarSheet[] = [
  {
    id: 'a4-21',
    name: '63.5 × 38.1 mm, 21 on A4',
    page: 'A4',
    columns: 3,
    rows: 7,
    widthMm: 63.5,
    heightMm: 38.1,
    gapMm: 2.5,
  },
  {
    id: 'a4-44',
    name: '48.5 × 25.4 mm, 44 on A4',
    page: 'A4',
    columns: 4,
    rows: 11,
    widthMm: 48.5,
    heightMm: 25.4,
    gapMm: 0,
  },
  {
    id: 'letter-30',
    name: '66.7 × 25.4 mm, 30 on Letter',
    page: 'Letter',
    columns: 3,
    rows: 10,
    widthMm: 66.7,
    heightMm: 25.4,
    gapMm: 3.2,
  },
]

/** Where the labels stand on their page: these sheets leave as much on the right as on the left, below as above. */
export function marginsOf({ page, columns, rows, widthMm, heightMm, gapMm }: JarSheet): {
  readonly leftMm: number
  readonly topMm: number
} {
  const [pageWidth, pageHeight] = pageMm[page]
  return {
    leftMm: (pageWidth - columns * widthMm - (columns - 1) * gapMm) / 2,
    topMm: (pageHeight - rows * heightMm) / 2,
  }
}

interface Place {
  readonly sheet: number
  readonly leftMm: number
  readonly topMm: number
}

/** Where so many labels go when the sheet's first free one is `first`, from 1. */
export function placesOn(sheet: JarSheet, count: number, first: number): readonly Place[] {
  const { leftMm, topMm } = marginsOf(sheet)
  const onOne = sheet.columns * sheet.rows
  return Array.from({ length: count }, (_, index) => {
    const at = first - 1 + index
    const here = at % onOne
    return {
      sheet: Math.floor(at / onOne),
      leftMm: leftMm + (here % sheet.columns) * (sheet.widthMm + sheet.gapMm),
      topMm: topMm + Math.floor(here / sheet.columns) * sheet.heightMm,
    }
  })
}
