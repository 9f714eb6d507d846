/** What a function returns when its input can be bad: a value, or a refusal whose sentence stands in the app's catalogue. */
export type Result<T, R> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: R }

export const accept = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })

export const refuse = <R>(refusal: R): { readonly ok: false; readonly refusal: R } => ({ ok: false, refusal })
