/** What has been typed into a form, by the path of each field in its document. */
export type Values = Readonly<Record<string, string>>

/**
 * One field of a plain form: where its value stands in the document (`hazards.caution`), what it is called, and how its
 * text is read. A form is a list of these; reading, showing and keeping drafts is the same for all.
 */
export type FieldSpec = FieldBase & FieldKind

interface FieldBase {
  readonly key: string
  readonly label: string
  readonly hint?: string
  /** An optional field that is left empty is left out of the document. */
  readonly optional?: boolean
}

type FieldKind =
  | { readonly kind: 'text'; readonly rows?: number; readonly longest?: number }
  /** One entry a line. */
  | { readonly kind: 'list'; readonly longest?: number; readonly most?: number }
  | NumberKind
  /** Typed in grams or with a unit, kept in whole micrograms. */
  | { readonly kind: 'mass'; readonly zero?: boolean; readonly negative?: boolean }
  | { readonly kind: 'date' }
  /** `find`: of a long list, which is searched on a sheet of its own. */
  | { readonly kind: 'choice'; readonly options: readonly FieldOption[]; readonly find?: boolean }
  /** Any number of the options, their values one a line. */
  | { readonly kind: 'many'; readonly options: readonly FieldOption[] }
  | { readonly kind: 'switch' }
  /** Names, each with its percentage, one a line: "Glyceryl Stearate 50". */
  | { readonly kind: 'parts'; readonly shareNeeded?: boolean }

interface NumberKind {
  readonly kind: 'number'
  /** Percentages are kept as fractions. */
  readonly unit?: string
  /** Between two temperatures: 9 °F are 5 °C then, so no other unit is taken. */
  readonly difference?: boolean
  readonly percent?: boolean
  readonly whole?: boolean
  /** In the unit that is typed. */
  readonly min?: number
  readonly max?: number
}

export interface FieldOption {
  readonly value: string
  readonly label: string
  /** A quiet line under it, which is searched too. */
  readonly sub?: string
}
