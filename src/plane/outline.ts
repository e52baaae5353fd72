/** Closed outline in mm, x0 y0 x1 y1 …, counter-clockwise, first point not repeated. */
export interface Outline {
  readonly xy: Float64Array;
}

/** Open polyline in mm, x0 y0 x1 y1 …. */
export interface Polyline {
  readonly xy: Float64Array;
}
