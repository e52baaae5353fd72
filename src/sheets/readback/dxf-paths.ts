import { byteText } from "../text-bytes.ts";

/** What a DXF says of its units, and the closed polylines of one layer, in drawing units. */
export interface FoundDxf {
  /** $INSUNITS: 4 is millimetres. NaN where the file does not say. */
  readonly units: number;
  readonly outlines: readonly Float64Array[];
}

/** Reads units and closed LWPOLYLINEs of a layer from the bytes. */
export function dxfOutlines(bytes: Uint8Array, layer: string): FoundDxf {
  const lines = byteText(bytes).split(/\r?\n/);
  let units = NaN;
  const outlines: Float64Array[] = [];
  let entity = "", onLayer = "", closed = false;
  let xy: number[] = [];
  const finish = () => {
    if (entity === "LWPOLYLINE" && onLayer === layer && closed) outlines.push(Float64Array.from(xy));
    xy = [];
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
      else if (code === 10 || code === 20) xy.push(Number(value));
    }
  }
  return { units, outlines };
}
