"""Reads every DXF file of a folder with ezdxf, a program independent of this project, and audits it.

Every file must be release 12 without errors or repairs; every outline must be closed, on its layer, and as long and wide as the file of the
same name with `.sizes` says, to 0.01 mm. Ends with `N passed, N failed`.
"""

import sys
from pathlib import Path

import ezdxf
from ezdxf import bbox

EXACT = 0.01
LAYERS = {"BLANK", "OUTLINE", "DRILL", "COUNTERSINK", "HOUSING", "OFFCUT", "LABEL"}
CLOSED = {"BLANK", "OUTLINE", "HOUSING", "OFFCUT"}


def complaints(path):
    """What is wrong with one file."""
    document = ezdxf.readfile(path)
    audit = document.audit()
    for found in (audit.errors, audit.fixes):
        yield from (f"audit: {entry.message}" for entry in found)
    if document.dxfversion != "AC1009":
        yield f"version {document.dxfversion}"
    sizes = []
    for entity in document.modelspace():
        layer = entity.dxf.layer
        if layer not in LAYERS:
            yield f"{entity.dxftype()} on layer {layer}"
        if (entity.dxftype() == "POLYLINE") != (layer in CLOSED):
            yield f"{entity.dxftype()} on layer {layer}"
        if layer in CLOSED and not entity.is_closed:
            yield f"an open outline on layer {layer}"
        if layer == "OUTLINE":
            size = bbox.extents([entity], fast=False).size
            sizes.append((size.x, size.y))
    wanted = [tuple(map(float, line.split())) for line in path.with_suffix(".sizes").read_text().splitlines()]
    if len(sizes) != len(wanted):
        yield f"{len(sizes)} outlines, {len(wanted)} wanted"
    for have, want in zip(sizes, wanted):
        if any(abs(one - other) > EXACT for one, other in zip(have, want)):
            yield f"an outline is {have}, wanted {want}"


def main(folder):
    """Judges every file of a folder; whether all are good."""
    paths = sorted(Path(folder).glob("*.dxf"))
    failed = 0
    for path in paths:
        found = list(complaints(path))
        failed += bool(found)
        for complaint in found:
            print(f"{path.name}: {complaint}")
    print(f"{len(paths) - failed} passed, {failed} failed")
    return bool(paths) and not failed


if __name__ == "__main__":
    sys.exit(0 if main(sys.argv[1]) else 1)
