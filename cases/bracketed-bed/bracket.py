#!/usr/bin/env python3
"""Writes brackets.vtu: the two brackets under the bed, as the mesh that case.toml names.

    python3 bracket.py brackets.vtu

Each bracket is a plate of 10 mm on edge, across the bed, which narrows from 100 mm at the wall to 30 mm at the bend
line, with a lip of 40 x 8 mm welded along its upper edge. Between the two runs a round bar of 20 mm, low at the wall,
with a brace to either lip. Plain text, so that it can be read and changed; any program that writes VTK unstructured
grids can produce such a file.
"""
import sys

# The apron's ribs reach to y = -70; the brackets end under the bed's web, clear of it.
FRONT, WALL, TOP = 10.0, 250.0, -144.0  # y where the bracket ends, y of the wall, z of its upper edge [mm]
AT_FRONT, AT_WALL = 30.0, 100.0         # depth of the plate [mm]
ALONG, DOWN = 16, 5                     # quads along y and down
LIP = (-20.0, 0.0, 20.0)                # x of the lip's points, from the plate

points, cells = [], []                  # cells: type, points, part, section, thickness, material
foot = []                               # the set of points that the wall holds


def point(x, y, z):
    for i, p in enumerate(points):
        if max(abs(a - b) for a, b in zip(p, (x, y, z))) < 1e-6:
            return i
    points.append((x, y, z))
    return len(points) - 1


def y_at(i):
    return FRONT + (WALL - FRONT) * i / ALONG


def plate(x, part):
    def z_at(i, j):
        depth = AT_FRONT + (AT_WALL - AT_FRONT) * i / ALONG
        return TOP - depth * j / DOWN
    grid = [[point(x, y_at(i), z_at(i, j)) for j in range(DOWN + 1)] for i in range(ALONG + 1)]
    for i in range(ALONG):
        for j in range(DOWN):
            corners = (grid[i][j], grid[i + 1][j], grid[i + 1][j + 1], grid[i][j + 1])
            cells.append((9, corners, part, "", 10.0, "S275JR"))
    foot.extend(grid[ALONG])
    return grid


def lip(x, part):
    rows = [[point(x + dx, y_at(i), TOP) for dx in LIP] for i in range(ALONG + 1)]
    for i in range(ALONG):
        for k in range(len(LIP) - 1):
            cells.append((9, (rows[i][k], rows[i][k + 1], rows[i + 1][k + 1], rows[i + 1][k]), part, "", 8.0, "S275JR"))


def rod(a, b, part, section, pieces):
    ends = [points[a], points[b]]
    row = [point(*(p + (q - p) * k / pieces for p, q in zip(*ends))) for k in range(pieces + 1)]
    for k in range(pieces):
        cells.append((3, (row[k], row[k + 1]), part, section, 0.0, "S275JR"))
    return row


left, right = 100.0, 800.0
grids = []
for x, name in ((left, "left"), (right, "right")):
    grids.append(plate(x, name))
    lip(x, name)
bar = rod(grids[0][ALONG // 2][DOWN], grids[1][ALONG // 2][DOWN], "rail", "rail", 14)
for x, at in ((left, bar[3]), (right, bar[11])):
    rod(at, grids[0 if x == left else 1][2][DOWN], "rail", "brace", 4)


def data(kind, name, values, components=1):
    text = " ".join(f"{v:.17g}" if isinstance(v, float) else str(v) for v in values)
    many = f' NumberOfComponents="{components}"' if components > 1 else ""
    return f'<DataArray type="{kind}" Name="{name}"{many} format="ascii">\n{text}\n</DataArray>\n'


def names(name, words):
    codes = " ".join(" ".join(str(b) for b in w.encode()) + " 0" for w in words)
    return (f'<Array type="String" Name="{name}" NumberOfTuples="{len(words)}" format="ascii">\n{codes}\n</Array>\n')


parts = ["left", "right", "rail"]
sections = ["", "rail", "brace"]
ends, total = [], 0
for c in cells:
    total += len(c[1])
    ends.append(total)
with open(sys.argv[1], "w") as out:
    out.write('<?xml version="1.0"?>\n<VTKFile type="UnstructuredGrid" version="0.1" byte_order="LittleEndian">\n')
    out.write("<UnstructuredGrid>\n<FieldData>\n" + names("part_names", parts) + names("section_names", sections))
    out.write(names("material_names", ["S275JR"]) + "</FieldData>\n")
    out.write(f'<Piece NumberOfPoints="{len(points)}" NumberOfCells="{len(cells)}">\n')
    out.write("<PointData>\n" + data("Int32", "wall", [int(i in foot) for i in range(len(points))]) + "</PointData>\n")
    out.write("<CellData>\n" + data("Int32", "part", [parts.index(c[2]) for c in cells]))
    out.write(data("Int32", "section", [sections.index(c[3]) for c in cells]))
    out.write(data("Float64", "thickness", [c[4] for c in cells]) + data("Int32", "material", [0 for _ in cells]))
    out.write("</CellData>\n<Points>\n" + data("Float64", "Points", [v for p in points for v in p], 3) + "</Points>\n")
    out.write("<Cells>\n" + data("Int64", "connectivity", [p for c in cells for p in c[1]]))
    out.write(data("Int64", "offsets", ends) + data("UInt8", "types", [c[0] for c in cells]) + "</Cells>\n")
    out.write("</Piece>\n</UnstructuredGrid>\n</VTKFile>\n")
