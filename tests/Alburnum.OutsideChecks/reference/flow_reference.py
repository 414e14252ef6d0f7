"""Liquid and trapped air in wood by a general-purpose solver: the method of lines with SciPy's BDF.

Run:  /usr/bin/python3 flow_reference.py > flow_reference.json     (Debian python3-scipy, python3-iapws)
      /usr/bin/python3 flow_reference.py --speed > flow_speed.json   (processor time of a sheet of 48 x 48 at several tolerances)
      /usr/bin/python3 flow_reference.py --more > flow_more.json     (columns of two woods, round pieces)

The same equations as docs/science/flow.md, written again from the equations; unknowns are the saturation and the mass of air
per void volume. Time is integrated to 1e-7, so what differs from the program is its own time and Newton error.
"""

import json
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import coo_matrix

LIQUID, AIR = 1.002e-3, 1.81e-5
SCALE = 9706.6667  # capillary scale, Pa: 2 * 72.8e-3 / 15e-6
TRAPPED = 0.05
ATMOSPHERE = 101325.0


def effective(s):
    return np.clip(s / (1 - TRAPPED), 0, 1)


def liquid_mobility(s):
    return effective(s) ** 2 / LIQUID


def air_mobility(s):
    return (1 - effective(s)) ** 2 / AIR


def capillary(s):
    floor = 0.05
    slope = -0.5 * SCALE * floor**-1.5
    low = SCALE * (floor**-0.5 - 1) + slope * (s - floor)
    return np.where(s >= floor, SCALE * (np.maximum(s, floor) ** -0.5 - 1), low)


class Wood:
    """Cells with void volumes, connections (first, second, k A / d) and faces (cell, k A / d)."""

    def __init__(self, voids, first, second, conductance, cell, face):
        self.voids = np.asarray(voids, float)
        self.first, self.second = np.asarray(first), np.asarray(second)
        self.conductance = np.asarray(conductance, float)
        self.cell, self.face = np.asarray(cell), np.asarray(face, float)

    def rates(self, _, y, vessel):
        n = self.voids.size
        s, m = y[:n], y[n:]
        p = m * ATMOSPHERE / (1 - s)
        liquid = p - capillary(s)
        lw, la = liquid_mobility(s), air_mobility(s)
        i, j = self.first, self.second
        drop = liquid[i] - liquid[j]
        w = self.conductance * np.where(drop >= 0, lw[i], lw[j]) * drop
        drop = p[i] - p[j]
        a = self.conductance * np.where(drop >= 0, la[i] * p[i], la[j] * p[j]) * drop / ATMOSPHERE
        ds, dm = np.zeros(n), np.zeros(n)
        np.add.at(ds, i, -w)
        np.add.at(ds, j, w)
        np.add.at(dm, i, -a)
        np.add.at(dm, j, a)
        c = self.cell
        drop = vessel - liquid[c]
        np.add.at(ds, c, self.face * np.where(drop >= 0, 1 / LIQUID, lw[c]) * drop)
        drop = vessel - p[c]
        np.add.at(dm, c, self.face * np.where(drop >= 0, 0, la[c] * p[c]) * drop / ATMOSPHERE)
        return np.concatenate([ds / self.voids, dm / self.voids])

    def pattern(self):
        n = self.voids.size
        rows = np.concatenate([self.first, self.second, np.arange(n)])
        columns = np.concatenate([self.second, self.first, np.arange(n)])
        rows, columns = np.concatenate([rows, rows, rows + n, rows + n]), np.concatenate([columns, columns + n, columns, columns + n])
        return coo_matrix((np.ones(rows.size), (rows, columns)), shape=(2 * n, 2 * n)).tocsr()

    def run(self, seconds, vessel, tolerance=1e-7):
        n = self.voids.size
        start = np.concatenate([np.zeros(n), np.ones(n)])
        began = time.process_time()
        answer = solve_ivp(
            self.rates, (0, seconds), start, method="BDF", args=(vessel,), rtol=tolerance, atol=tolerance * 1e-2,
            jac_sparsity=self.pattern(), first_step=1e-6,
        )
        assert answer.success, answer.message
        s = answer.y[:n, -1]
        return s, float((s * self.voids).sum()), time.process_time() - began


def line(depth, cells, k, voids):
    width = depth / cells
    return Wood([width * voids] * cells, range(cells - 1), range(1, cells), [k / width] * (cells - 1), [0], [2 * k / width])


def layered(depth, cells, outer, inner, border, voids):
    """A column whose permeability changes at a depth: sapwood over heartwood."""
    width = depth / cells
    k = np.array([outer if (i + 0.5) * width < border else inner for i in range(cells)])
    joins = 2 / (width / k[:-1] + width / k[1:])
    return Wood([width * voids] * cells, range(cells - 1), range(1, cells), joins, [0], [2 * k[0] / width])


def round_piece(radius, cells, k, voids):
    """A round piece in rings, 1 m of its length; exact for steady radial flow."""
    width = radius / cells
    edges = radius - width * np.arange(cells + 1)
    middle = (edges[:-1] + edges[1:]) / 2
    volumes = np.pi * (edges[:-1] ** 2 - edges[1:] ** 2) * voids
    resistance = np.log(middle[:-1] / edges[1:-1]) / k + np.log(edges[1:-1] / middle[1:]) / k
    return Wood(volumes, range(cells - 1), range(1, cells), 2 * np.pi / resistance, [0], [2 * np.pi * k / np.log(radius / middle[0])])


COLUMNS = [  # depth m, cells, k outside, k inside, border m, voids, minutes, vessel kPa
    (0.02, 40, 1e-16, 1e-19, 0.01, 0.6, 30, 1300),
    (0.02, 40, 1e-15, 5e-18, 0.012, 0.55, 20, 1000),
    (0.04, 50, 5e-17, 5e-17, 0.04, 0.65, 90, 800),
    (0.025, 50, 2e-18, 2e-18, 0.025, 0.6, 120, 1400),
    (0.03, 60, 4e-17, 4e-18, 0.015, 0.5, 60, 600),
    (0.05, 50, 3e-16, 1e-17, 0.025, 0.62, 15, 1200),
]
ROUNDS = [(0.05, 40, 2e-17, 0.6, 60, 1300), (0.06, 48, 1e-16, 0.55, 30, 1000), (0.04, 40, 5e-18, 0.65, 120, 1400), (0.08, 50, 3e-17, 0.58, 90, 800)]


def more():
    """Columns of two woods and round pieces: the solution held at the end."""
    rows = []
    for depth, cells, outer, inner, border, voids, minutes, vessel in COLUMNS:
        _, held, _ = layered(depth, cells, outer, inner, border, voids).run(60 * minutes, 1e3 * vessel)
        rows.append({"shape": "column", "sizeMm": depth * 1e3, "cells": cells, "outerM2": outer, "innerM2": inner, "borderMm": border * 1e3, "voids": voids, "minutes": minutes, "vesselKPa": vessel, "heldM3": held})
    for radius, cells, k, voids, minutes, vessel in ROUNDS:
        _, held, _ = round_piece(radius, cells, k, voids).run(60 * minutes, 1e3 * vessel)
        rows.append({"shape": "round", "sizeMm": radius * 1e3, "cells": cells, "outerM2": k, "innerM2": k, "borderMm": 0, "voids": voids, "minutes": minutes, "vesselKPa": vessel, "heldM3": held})
    json.dump({"script": "flow_reference.py --more", "python": sys.version.split()[0], "scipy": scipy.__version__, "runs": rows}, sys.stdout, indent=1)


def sheet(side, cells, kx, ky, voids):
    d = side / cells
    at = np.arange(cells * cells).reshape(cells, cells)
    first = np.concatenate([at[:, :-1].ravel(), at[:-1, :].ravel()])
    second = np.concatenate([at[:, 1:].ravel(), at[1:, :].ravel()])
    conductance = np.concatenate([np.full(at[:, :-1].size, kx), np.full(at[:-1, :].size, ky)])
    cell = np.concatenate([at[:, 0], at[:, -1], at[0, :], at[-1, :]])
    face = np.concatenate([np.full(2 * cells, 2 * kx), np.full(2 * cells, 2 * ky)])
    return Wood([d * d * voids] * cells**2, first, second, conductance, cell, face)


def speed():
    """How long the sheet takes, and how far its uptake is from that at the finest tolerance."""
    rows = []
    for tolerance in (1e-5, 1e-3):
        _, held, seconds = sheet(0.04, 48, 4e-17, 1e-17, 0.6).run(1800, 1.3e6, tolerance)
        rows.append({"tolerance": tolerance, "heldM3": held, "cpuSeconds": round(seconds, 2), "offByShare": held / (rows[0]["heldM3"] if rows else held) - 1})
    json.dump({"script": "flow_reference.py --speed", "python": sys.version.split()[0], "scipy": scipy.__version__, "sheet": "48 x 48", "runs": rows}, sys.stdout, indent=1)


def main():
    saturation, held, _ = line(0.03, 60, 2e-17, 0.6).run(3600, 1.3e6)
    plane, held2, seconds = sheet(0.04, 16, 4e-17, 1e-17, 0.6).run(1800, 1.3e6)
    answer = {
        "script": "flow_reference.py",
        "python": sys.version.split()[0],
        "scipy": scipy.__version__,
        "numpy": np.__version__,
        "line": {"heldM3": held, "saturation": [round(float(v), 6) for v in saturation]},
        "sheet": {"heldM3": held2, "saturation": [round(float(v), 6) for v in plane], "cpuSeconds": round(seconds, 2)},
    }
    try:
        import iapws
        from iapws import IAPWS97

        water = {str(c): [IAPWS97(T=c + 273.15, P=0.101325).mu * 1e3, IAPWS97(T=c + 273.15, P=0.101325).rho] for c in (10, 15, 20, 30, 40, 60)}
        answer["iapws"] = {"version": getattr(iapws, "__version__", "1.5.3"), "water": {c: [round(v, 4) for v in row] for c, row in water.items()}}
    except ImportError:
        pass
    json.dump(answer, sys.stdout, indent=1)


if __name__ == "__main__":
    if "--speed" in sys.argv:
        speed()
    elif "--more" in sys.argv:
        more()
    else:
        main()
