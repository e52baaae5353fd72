import { useEffect, useMemo, useState, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { usualParts, type UpperCut } from "#pieces/choices.ts";
import type { Mark, Piece } from "#pieces/piece.ts";
import { showsPlace, type Grounded } from "../state/grounds.ts";
import { Carrier, type LaidPiece } from "../state/laid-on-last.ts";
import { eyes, type EyeName } from "./eyes.ts";
import { useInk } from "./ink.ts";
import type { Eye, SceneLine } from "./last-scene.ts";
import { LookFrom } from "./look-from.tsx";
import { PinnedNotes } from "./margin-words.tsx";
import { notesOnLast } from "./notes.ts";
import { useTurning } from "./turning.ts";
import { useScene } from "./use-scene.ts";

interface PieceOnLastProps {
  readonly pair: LastPair;
  readonly piece: Piece;
  /** It, or what bears its marks where it has no sheet of its own. */
  readonly grounded: readonly Grounded[];
}

/** How far lines are drawn above the last, mm. */
const liftMm = 1;

/** From above and below, the last lying along the picture, which is low and wide here. */
const lyingAlong: Partial<Record<EyeName, Eye>> = { above: { turnDeg: 262, riseDeg: 58 }, below: { turnDeg: 268, riseDeg: -76 } };

const eyeOf = (name: EyeName): Eye => ({ ...(lyingAlong[name] ?? eyes[name]) });

/** Marks that are lines on the shoe; net and fold lie on its edge, and the others are for the knife. */
const onShoe = new Set(["centre", "joint", "heel", "place"]);

/** One piece where it lies on the last: what it covers in card, its edge in bold, its marks thin. A part that is sewn on is shown by its place on the upper, in bold. */
export function PieceOnLast({ pair, piece, grounded }: PieceOnLastProps): ReactElement {
  const ink = useInk();
  // Another piece is looked at from where that is seen best, until the maker turns the last.
  const [asked, ask] = useState<{ readonly name: EyeName; readonly of: string }>();
  const best = eyeFor(piece, chosenCut(pair));
  const from = asked?.of === piece.name ? asked : undefined;
  const eye = useMemo(() => eyeOf(from?.name ?? best), [from, best]);
  const { canvas, frame, size, scene: live, none } = useScene(pair.last, eye);
  const itself = grounded[0]?.piece === piece;
  const { laid, marks, place } = useMemo(() => {
    const each = grounded.map(({ piece: p, ground }) => {
      const carrier = new Carrier(ground);
      const lines = (of: (m: Mark) => boolean): readonly Float64Array[] => p.marks.flatMap((m) => (of(m) ? carrier.carry(drawnAs(m)) : []));
      return { laid: carrier.lay(p.outline), marks: lines((m) => m.kind === "line" && onShoe.has(m.use)), place: itself ? [] : lines((m) => showsPlace(piece.name, m)) };
    });
    return { laid: together(each.map((e) => e.laid)), marks: each.flatMap((e) => e.marks), place: each.flatMap((e) => e.place) };
  }, [grounded, itself, piece]);
  useEffect(() => live?.paintLast(ink.wood), [live, pair.last.mesh, ink.wood]);
  useEffect(() => live?.setShell(laid.covered.triangles.length > 0 ? laid.covered : undefined, ink.card), [live, laid, ink.card]);
  useEffect(() => {
    if (!live) return;
    const line = (key: string, points: readonly Float64Array[], widthPx: number, colour: string): SceneLine => ({ key, points: points.map((p) => live.lifted(p, liftMm, false)), colour, widthPx });
    live.setLines(itself ? [line("edge", laid.edges, 3, ink.accent), line("marks", marks, 1.4, ink.ink)] : [line("edge", laid.edges, 1.4, ink.ink), line("place", place, 3.4, ink.accent)], []);
  }, [live, laid, marks, place, itself, ink, pair.last.mesh]);
  const turn = useTurning(live);
  const notes = useMemo(() => notesOnLast(pair, "Pieces"), [pair]);
  const pins = live && size.width > 0 ? notes.map((n) => ({ key: n.key, text: n.text, ...live.project(n.at) })).filter((n) => n.seen) : [];
  return (
    <section className="view last" aria-label={`The ${piece.name} on the last`}>
      <div
        className="frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`The ${piece.name} where it lies on the last. Arrow keys turn it, plus and minus bring it nearer or take it farther.`}
        onKeyDown={turn.key}
        onPointerDown={turn.down}
        onPointerMove={turn.move}
        onWheel={(e) => live?.zoom(Math.exp(-e.deltaY * 0.0015))}
        onPointerUp={turn.up}
        onPointerCancel={turn.up}
      >
        <canvas ref={canvas} aria-hidden="true" />
        {none && <p className="nothing">This browser cannot draw the last in three dimensions. The flat piece still stands beside it.</p>}
        <svg className="overlay" width={size.width} height={size.height} aria-hidden="true" data-runs={laid.edges.length} data-places={place.length}>
          {pins.length > 0 && <PinnedNotes items={pins} width={size.width} height={size.height} clearOf={[]} />}
        </svg>
      </div>
      <div className="under"><LookFrom onLook={(name) => ask({ name, of: piece.name })} /></div>
    </section>
  );
}

/** The line of a mark as it is carried to the last: a hole of the awl as a short stroke. */
function drawnAs(mark: Mark): Float64Array {
  if (mark.kind === "line") return mark.line.xy;
  if (mark.kind === "prick") return Float64Array.of(mark.at[0] - 1.5, mark.at[1], mark.at[0] + 1.5, mark.at[1]);
  return mark.kind === "notch" ? Float64Array.of(...mark.at, ...mark.toward) : new Float64Array();
}

/** Several pieces on the last as one. */
function together(laid: readonly LaidPiece[]): LaidPiece {
  if (laid.length === 1) return laid[0]!;
  const starts = laid.map((_, i) => laid.slice(0, i).reduce((sum, l) => sum + l.covered.positions.length / 3, 0));
  return {
    edges: laid.flatMap((l) => l.edges),
    covered: {
      positions: Float64Array.from(laid.flatMap((l) => [...l.covered.positions])),
      triangles: Uint32Array.from(laid.flatMap((l, i) => [...l.covered.triangles].map((v) => v + starts[i]!))),
    },
  };
}

const chosenCut = ({ job }: LastPair): UpperCut => job.parts.cut ?? usualParts.cut;

/** From where a piece is seen best. */
function eyeFor({ ground, name }: Piece, cut: UpperCut): EyeName {
  if (/strap|gore/.test(name)) return "outer side";
  if (name.startsWith("back strip")) return "back";
  // Its only seam lies at the inner waist.
  if (name === "upper" && cut === "inner-seam") return "inner side";
  // What lies beneath is seen from below, the whole of it.
  if (ground === "bottom" || /sole|sock|shank|filler/.test(name)) return "below";
  if (ground === "heel" || ground === "stiffener") return "back";
  if (ground === "inner quarter") return "inner side";
  return ground === "outer quarter" ? "outer side" : "above";
}
