/** Makes of a short secret what may be kept of it: salted, and slow on purpose. */
export interface SlowHash {
  /** 128 random bits, hex. */
  newSalt(): string
  /** 256 bits, hex. Rejects where the browser has no such arithmetic: outside a secure context. */
  hash(secret: string, salt: string, iterations: number): Promise<string>
}
