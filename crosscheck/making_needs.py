"""What a pair takes, recomputed by shapely from outlines and strips, folds from the DXF: net areas, tapes, bonds, glue, and both meanings of waste."""

from math import ceil

import ezdxf
from ezdxf.path import make_path
from shapely import Polygon
from shapely.geometry import LineString

from checks import Checks, outline, report, sets

SKINS_AND_SHEETS = ["upper leather", "lining leather", "sock leather", "stiffener", "toe puff", "side lining", "insole board", "second board", "filler", "sole leather", "lift leather", "top piece leather"]
# mm2 of a pair; the report rounds each outline's coordinates and each sum to 1e-4.
AREA = 0.3
STIFF = ["stiffener", "toe puff", "side lining"]
BESIDE_LINING = ["strap lining", "bow stay"]


def good_of(piece):
    """What a piece is cut from, as it is bought: of the heel's leather only the top piece has to be from the butt."""
    if piece["material"] == "heel leather":
        return "top piece leather" if piece["name"] == "top piece" else "lift leather"
    return piece["material"]


def area(pieces, good, without=()):
    return sum(piece["perPair"] * Polygon(outline(piece)).area for piece in pieces if good in (good_of(piece), piece["material"]) and piece["name"] not in without)


def strips_of(told, material):
    return [strip for strip in told["strips"] if strip["material"] == material]


def materials(checks, name, told):
    pieces, needs = told["pieces"], {need["name"]: need for need in told["making"]["materials"]}
    for good in SKINS_AND_SHEETS:
        strips = sum(s["perPair"] * s["lengthMm"] * s["widthMm"] for s in strips_of(told, good))
        net = area(pieces, good) + strips
        if net == 0:
            checks.true(f"{name}, {good}: not on the list where no piece asks for it", good not in needs)
        else:
            checks.near(f"{name}, {good}: net", net, needs[good]["net"], AREA, "mm2")
    for need in needs.values():
        checks.near(f"{name}, {need['name']}: parts add up", sum(part["net"] for part in need["parts"]), need["net"], 1e-2, need["unit"])
        if "waste" in need:
            waste = need["waste"]
            checks.near(f"{name}, {need['name']}: waste on the pieces follows from waste of what is bought", waste["ofBought"] / (1 - waste["ofBought"]), waste["onPieces"], 4e-4, "")
            checks.near(f"{name}, {need['name']}: bought less waste is net", need["gross"] * (1 - waste["ofBought"]) / need["net"], 1, 2e-4, "of net")


def holds(checks, name, told):
    """The smallest rectangle round the largest piece, by shapely's minimum rotated rectangle."""
    for need in told["making"]["materials"]:
        if "holds" not in need:
            continue
        cut = [Polygon(outline(piece)) for piece in told["pieces"] if good_of(piece) == need["name"]]
        box = max(cut, key=lambda one: one.area).minimum_rotated_rectangle
        x, y = box.exterior.coords.xy
        sides = sorted(LineString([(x[k], y[k]), (x[k + 1], y[k + 1])]).length for k in range(2))
        checks.near(f"{name}, {need['name']}: area of the smallest rectangle round the largest piece", sides[0] * sides[1], need["holds"]["longMm"] * need["holds"]["wideMm"], 0.3, "mm2")


def tapes(checks, name, told):
    needs = [need for need in told["making"]["materials"] if need["name"].endswith("tape")]
    strips, ends = strips_of(told, "tape"), 2 * told["pieceSettings"]["stripEndsMm"]
    checks.near(f"{name}: tapes as cut, to whole millimetres", sum(s["perPair"] * ceil(s["lengthMm"]) for s in strips), sum(need["gross"] for need in needs), 1e-2)
    checks.near(f"{name}: tapes as laid", sum(s["perPair"] * (s["lengthMm"] - ends) for s in strips), sum(need["net"] for need in needs), 1e-2)


def laid(told, strip):
    """A strip's area as it lies, its two ends trimmed, for the pair."""
    return strip["perPair"] * (strip["lengthMm"] - 2 * told["pieceSettings"]["stripEndsMm"]) * strip["widthMm"]


def along_edges(checks, name, told, where, found):
    """Folds, laps, tapes and bindings: how long they are by how wide."""
    settings, parts = told["pieceSettings"], told["parts"]
    want = {
        "seam tapes": sum(laid(told, strip) for strip in strips_of(told, "tape") if strip["name"].startswith("seam tape")),
        "binding of the topline": sum(laid(told, strip) for strip in strips_of(told, "upper leather")) / 2,
        "lapped seams": 2 * settings["lapUnderMm"] * sum(line["lengthMm"] for line in told["stitching"] if parts["seam"] == "lapped" and line["use"] == "lapped" and line["name"].endswith("seam")),
    }
    for bond, mm2 in want.items():
        checks.near(f"{name}, {bond}: bonded area", mm2, found.get(bond, {"areaMm2": 0})["areaMm2"], AREA, "mm2")
    if "fold" in told["printed"]["layers"]:
        flat = [list(make_path(line).flattening(0.0005)) for line in ezdxf.readfile(where / "pattern.dxf").modelspace().query('LWPOLYLINE[layer=="fold"]')]
        folds = [long for long in (LineString([(p.x, p.y) for p in points]).length for points in flat) if long > 40]
        mm2 = sum(folds) * settings["toplineFoldMm"]
        checks.near(f"{name}: fold of the topline, by the lines in the DXF", mm2, found.get("fold of the topline", {"areaMm2": 0})["areaMm2"], 1e-4 * mm2 + 1e-9, "mm2")


def bonds(checks, name, told, where):
    pieces, found = told["pieces"], {bond["name"]: bond for bond in told["making"]["bonds"]}
    stiff = {material: area(pieces, material) for material in STIFF}
    margin = area(pieces, "insole board") - area(pieces, "filler")
    want = {
        "lasting margin to the insole": margin,
        "upper to the lining in the margin": margin,
        "bottom filler": area(pieces, "filler"),
        "second board to the insole": area(pieces, "second board"),
        "shank between the boards": area(pieces, "shank"),
        "outsole": area(pieces, "sole leather"),
        "sock": area(pieces, "sock leather"),
        # The forepart stays loose, a third of what meets.
        "lining to the upper": 2 / 3 * (area(pieces, "lining leather", BESIDE_LINING) - sum(stiff.values()) - margin),
        **{f"{material} to the {layer}": mm2 for material, mm2 in stiff.items() for layer in ("lining", "upper") if mm2 > 0},
    }
    for bond, mm2 in want.items():
        checks.near(f"{name}, {bond}: bonded area", mm2, found[bond]["areaMm2"], AREA, "mm2")
    layers = {piece["name"] for piece in pieces if piece["material"] == "heel leather"}
    checks.near(f"{name}: bonded area of the heel's layers", area(pieces, "heel leather"), sum(found[layer]["areaMm2"] for layer in layers), AREA, "mm2")
    along_edges(checks, name, told, where, found)
    for bond in found.values():
        checks.near(f"{name}, {bond['name']}: grams", bond["areaMm2"] * 1e-6 * sum(bond["coats"]) * bond["gPerM2"], bond["g"], 1e-3, "g")
    for need in told["making"]["materials"]:
        if need["unit"] == "g":
            checks.near(f"{name}, {need['name']}: grams of all its bonds", sum(bond["g"] for bond in found.values() if bond["glue"] == need["name"]), need["net"], 1e-2, "g")


checks = Checks("What a pair takes, by shapely")
for name, path in sets():
    told = report(path)
    materials(checks, name, told)
    holds(checks, name, told)
    tapes(checks, name, told)
    bonds(checks, name, told, path)
checks.end()
