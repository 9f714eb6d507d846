/** A linear program: the least of Σ minimise_j · v_j over v ≥ 0 within its rows. */
export interface Program {
  readonly variables: number
  readonly minimise: ReadonlyMap<number, number>
  readonly rows: readonly Row[]
}

/** least ≤ Σ coefficient_j · v_j ≤ most */
export interface Row {
  readonly coefficients: ReadonlyMap<number, number>
  readonly least?: number
  readonly most?: number
}

export type Solved =
  | { readonly solved: true; readonly values: readonly number[]; readonly objective: number }
  | { readonly solved: false; readonly why: 'impossible' | 'gave-up' }

/** What the solver takes for zero; its own default lets costs be off in the fifth place. */
const precision = 1e-10

/** An answer may be past a row, whose largest coefficient is 1, by this much; what is further past is no answer. */
const rowSlack = 1e-8

/**
 * Solves a program of a few hundred rows. The solver is loaded when it is first needed. Its own objective is not used: it
 * is reckoned again from the variables, and they are tried on every row.
 */
export async function solveProgram({ variables: count, minimise, rows }: Program): Promise<Solved> {
  const { solve } = await import('yalps')
  const program = { variables: count, minimise, rows: rows.map(levelled) }
  const { status, variables } = solve(
    {
      direction: 'minimize',
      objective: 'goal',
      constraints: program.rows.map(({ least, most }, index) => [
        `${index}`,
        least !== undefined && least === most
          ? { equal: least }
          : { ...(least === undefined ? {} : { min: least }), ...(most === undefined ? {} : { max: most }) },
      ]),
      variables: columnsOf(program).map((column, index) => [`${index}`, column]),
    },
    { precision, checkCycles: true, includeZeroVariables: true },
  )
  if (status === 'infeasible') return { solved: false, why: 'impossible' }
  const found = new Map(variables)
  const values = Array.from({ length: count }, (_, index) => Math.max(0, found.get(`${index}`) ?? 0))
  if (status !== 'optimal' || !program.rows.every((row) => keeps(row, values))) return { solved: false, why: 'gave-up' }
  return { solved: true, values, objective: worth(minimise, values) }
}

function columnsOf({ variables, minimise, rows }: Program): [string, number][][] {
  const columns = Array.from({ length: variables }, (_, index): [string, number][] => [
    ['goal', minimise.get(index) ?? 0],
  ])
  for (const [index, { coefficients }] of rows.entries())
    for (const [variable, coefficient] of coefficients) columns[variable]?.push([`${index}`, coefficient])
  return columns
}

/** The same row with 1 as its largest coefficient: rows of very different size make the solver lose its way. */
function levelled({ coefficients, least, most }: Row): Row {
  const size = Math.max(...[...coefficients.values()].map(Math.abs)) || 1
  return {
    coefficients: new Map([...coefficients].map(([variable, coefficient]) => [variable, coefficient / size])),
    ...(least === undefined ? {} : { least: least / size }),
    ...(most === undefined ? {} : { most: most / size }),
  }
}

function keeps({ coefficients, least, most }: Row, values: readonly number[]): boolean {
  const value = worth(coefficients, values)
  return (
    value >= (least ?? Number.NEGATIVE_INFINITY) - rowSlack && value <= (most ?? Number.POSITIVE_INFINITY) + rowSlack
  )
}

function worth(coefficients: ReadonlyMap<number, number>, values: readonly number[]): number {
  let sum = 0
  for (const [variable, coefficient] of coefficients) sum += coefficient * (values[variable] ?? 0)
  return sum
}
