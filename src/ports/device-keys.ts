/** What this installation signs with. The private half can be used here, and read or copied by nobody. */
export interface DeviceKeys {
  /** The public half (SPKI, base64) of the key that is kept here; null where there is none. */
  kept(): Promise<string | null>
  /** Makes a key and keeps it in the place of any other. Rejects where the browser has no such arithmetic. */
  make(): Promise<string>
  /** ECDSA over P-256 with SHA-256, base64, with the kept key. Rejects where that one is no use any more. */
  sign(text: string): Promise<string>
  /** Rejects where the browser has no such arithmetic: outside a secure context. */
  verify(publicKey: string, text: string, signature: string): Promise<boolean>
  /** One after the other, over all pages: two of them would make a key each. */
  inTurn<T>(task: () => Promise<T>): Promise<T>
}

/** Where the key is kept: in the database of this installation, in no journal, file or backup. */
export interface KeyShelf {
  read(): Promise<KeptKey | null>
  keep(key: KeptKey): Promise<void>
  inTurn: DeviceKeys['inTurn']
}

export interface KeptKey {
  readonly publicKey: string
  readonly privateKey: CryptoKey
}
