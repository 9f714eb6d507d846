/** Whose name stands under what, and how it was given. */
export interface Signature {
  readonly person: string
  readonly meaning: string
  /** Absent in entries of before PINs. */
  readonly how?: 'pin' | 'name'
  /** Since when the PIN that was given is the person's. */
  readonly pinSetAt?: string
  /** Signed in the place of this person, who could not, and why. */
  readonly insteadOf?: string
  readonly reason?: string
}

/** A signature in its place: what it covers. */
export interface Signed extends Signature {
  /** Of a second person at a step: the step, and the entry that was looked at. */
  readonly step?: string
  readonly entry?: string
  /** The hash of the entry that the batch ended with. */
  readonly head?: string
}

/** Given for a batch as its people saw it: `seen` is the hash of its last entry then. */
export interface Signatures {
  readonly by: readonly Signature[]
  readonly seen: string | null
}
