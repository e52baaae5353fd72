import { pushArc } from "#plane/flatten-curve.ts";
import { byteText } from "../text-bytes.ts";
import { flatMm } from "./flat.ts";

/** What a DXF says of its units, and the closed polylines of one layer, in drawing units. */
export interface FoundDxf {
  /** $INSUNITS: 4 is millimetres. NaN where the file does not say. */
  readonly units: number;
  /** Arcs as fine points. */
  readonly outlines: readonly Float64Array[];
}

/** Reads units and closed LWPOLYLINEs of a layer from the bytes. */
export function dxfOutlines(bytes: Uint8Array, layer: string): FoundDxf {
  const lines = byteText(bytes).split(/\r?\n/);
  let units = NaN;
  const outlines: Float64Array[] = [];
  let entity = "", onLayer = "", closed = false;
  let vertices: number[] = [];
  const finish = () => {
    if (entity === "LWPOLYLINE" && onLayer === layer && closed) outlines.push(pointsOf(vertices));
    vertices = [];
    closed = false;
    onLayer = "";
  };
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]), value = lines[i + 1]!;
    if (code === 9 && value === "$INSUNITS") units = Number(lines[i + 3]);
    else if (code === 0) {
      finish();
      entity = value;
    } else if (entity === "LWPOLYLINE") {
      if (code === 8) onLayer = value;
      else if (code === 70) closed = (Number(value) & 1) === 1;
      else if (code === 10) vertices.push(Number(value), NaN, 0);
      else if (code === 20) vertices[vertices.length - 2] = Number(value);
      else if (code === 42) vertices[vertices.length - 1] = Number(value);
    }
  }
  return { units, outlines };
}

/** Points of a closed polyline of vertices x, y, bulge; the first comes back as the last too. */
function pointsOf(vertices: readonly number[]): Float64Array {
  const out = vertices.slice(0, 2);
  for (let i = 0; i < vertices.length; i += 3) {
    const next = (i + 3) % vertices.length;
    pushArc(out, vertices[i]!, vertices[i + 1]!, vertices[next]!, vertices[next + 1]!, vertices[i + 2]!, flatMm);
  }
  return Float64Array.from(out);
}
