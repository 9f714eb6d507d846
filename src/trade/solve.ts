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

/** An answer may be past a row by this much for its largest coefficient; what is further past is no answer. */
const rowSlack = 1e-8

/**
 * Solves a program of a few hundred rows whose numbers are near 1. The solver is loaded when it is first needed. Its own
 * objective is not used: it is reckoned again from the variables, and they are tried on every row.
 */
export async function solveProgram(program: Program): Promise<Solved> {
  const { solve } = await import('yalps')
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
  const values = Array.from({ length: program.variables }, (_, index) => Math.max(0, found.get(`${index}`) ?? 0))
  if (status !== 'optimal' || !program.rows.every((row) => keeps(row, values))) return { solved: false, why: 'gave-up' }
  return { solved: true, values, objective: worth(program.minimise, values) }
}

function columnsOf({ variables, minimise, rows }: Program): [string, number][][] {
  const columns = Array.from({ length: variables }, (_, index): [string, number][] => [
    ['goal', minimise.get(index) ?? 0],
  ])
  for (const [index, { coefficients }] of rows.entries())
    for (const [variable, coefficient] of coefficients) columns[variable]?.push([`${index}`, coefficient])
  return columns
}

function keeps({ coefficients, least, most }: Row, values: readonly number[]): boolean {
  const value = worth(coefficients, values)
  const slack = rowSlack * Math.max(1, ...[...coefficients.values()].map(Math.abs))
  return value >= (least ?? Number.NEGATIVE_INFINITY) - slack && value <= (most ?? Number.POSITIVE_INFINITY) + slack
}

function worth(coefficients: ReadonlyMap<number, number>, values: readonly number[]): number {
  let sum = 0
  for (const [variable, coefficient] of coefficients) sum += coefficient * (values[variable] ?? 0)
  return sum
}
