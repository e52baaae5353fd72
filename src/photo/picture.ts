/** A picture as it stands upright. Row 0 on top; each pixel red, green, blue, alpha, sRGB, 8 bits. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** width × height × 4. */
  readonly rgba: Uint8Array;
}
