"""Page sizes and scale bars of the PDF sheets, by pdfplumber."""

import pdfplumber

from checks import Checks, folder

MM = 25.4 / 72  # one point in millimetres (ISO 32000-1: default user space is 1/72 inch)
PAPERS = {"A4": (210, 297), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1 A

checks = Checks("PDF sheets, by pdfplumber")


def straight(page):
    """All straight strokes of a page as (x0, y0, x1, y1), mm."""
    return [[v * MM for v in (line["x0"], line["y0"], line["x1"], line["y1"])] for line in page.lines]


def bar(page, axis):
    """The 100 mm bar of an axis: among strokes along that axis, the one whose length comes nearest."""
    lengths = [abs(s[axis + 2] - s[axis]) for s in straight(page) if abs(s[3 - axis] - s[1 - axis]) < 1e-3]
    return min(lengths, key=lambda length: abs(length - 100), default=0)


for paper, where in (("A4", folder()), ("Letter", folder() / "letter")):
    with pdfplumber.open(where / "pattern.pdf") as pdf:
        checks.true(f"{paper}: has pages", len(pdf.pages) > 1, f"{len(pdf.pages)}")
        for page in pdf.pages:
            name = f"{paper} page {page.page_number}"
            checks.near(f"{name}: width", float(page.width) * MM, PAPERS[paper][0], 0.01)
            checks.near(f"{name}: height", float(page.height) * MM, PAPERS[paper][1], 0.01)
            checks.true(f"{name}: no unit of its own", "UserUnit" not in page.page_obj.attrs)
            checks.near(f"{name}: bar across", bar(page, 0), 100, 0.05)
            checks.near(f"{name}: bar up", bar(page, 1), 100, 0.05)
checks.end()
