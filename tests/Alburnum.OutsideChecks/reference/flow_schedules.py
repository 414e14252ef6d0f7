"""Whole schedules in one dimension by a general-purpose solver: uptake, air and front at the end of every stage.

Run:  /usr/bin/python3 flow_schedules.py > flow_schedules.json     (Debian python3-scipy; some minutes)

The equations of docs/science/flow.md by the method of lines and SciPy's BDF, as in flow_reference.py, on a column of 50 mm whose cells
widen from the face inwards. Every schedule of data/impregnation/schedules.yaml; the stages are kept beside the answers, so that the
check goes on holding what was run. Each stage is integrated by itself, from where the one before ended.
"""

import json
import pathlib
import re
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp

from flow_reference import AIR, ATMOSPHERE, LIQUID, Wood, air_mobility, capillary, liquid_mobility

DEPTH, CELLS, GRADING, VOIDS = 0.05, 60, 3.0, 0.6
SCALE_OF_FRONT = 0.2  # saturation at which the front is read
TOLERANCE = 1e-6
PERMEABILITIES = [1e-19, 1e-17, 1e-16, 1e-15, 1e-13]
WET = [(1e-16, 0.25), (1e-14, 0.25)]  # permeability, share of the voids that holds water from the start


def schedules():
    """Name and stages (contact, minutes, from kPa, to kPa) of every schedule that ships."""
    text = (pathlib.Path(__file__).parents[3] / "data/impregnation/schedules.yaml").read_text()
    for name, body in re.findall(r"- name: (.+?)\n(.*?)(?=\n  - name: |\Z)", text, re.S):
        at, stages = ATMOSPHERE / 1000, []
        for against, to, ramp, hold in re.findall(r"against: (\w+), kPa: ([\d.]+), rampMinutes: ([\d.]+), holdMinutes: ([\d.]+)", body):
            to = float(to)
            if float(ramp) > 0:
                stages.append((against, float(ramp), at, to))
            if float(hold) > 0:
                stages.append((against, float(hold), to, to))
            at = to
        yield name, stages


class Column(Wood):
    """A column under air or liquid whose vessel's pressure runs straight from one value to another."""

    def under(self, contact, seconds, start_pa, end_pa):
        n = self.voids.size
        wet, dry = (1 / LIQUID, 0.0) if contact == "liquid" else (0.0, 1 / AIR)
        k0 = self.face[0]

        def rates(t, y):
            s, m = y[:n], y[n : 2 * n]
            p = m * ATMOSPHERE / (1 - s)
            liquid = p - capillary(s)
            lw, la = liquid_mobility(s), air_mobility(s)
            drop = liquid[:-1] - liquid[1:]
            w = self.conductance * np.where(drop >= 0, lw[:-1], lw[1:]) * drop
            drop = p[:-1] - p[1:]
            a = self.conductance * np.where(drop >= 0, la[:-1] * p[:-1], la[1:] * p[1:]) * drop / ATMOSPHERE
            vessel = start_pa + (end_pa - start_pa) * t / seconds
            drop = vessel - liquid[0]
            w0 = k0 * (wet if drop >= 0 else lw[0]) * drop
            drop = vessel - p[0]
            a0 = k0 * (dry * vessel if drop >= 0 else la[0] * p[0]) * drop / ATMOSPHERE
            w, a = np.concatenate([[w0], w, [0]]), np.concatenate([[a0], a, [0]])
            return np.concatenate([(w[:-1] - w[1:]) / self.voids, (a[:-1] - a[1:]) / self.voids])

        return rates


def column(k):
    t = np.linspace(0, 1, CELLS + 1)
    edges = DEPTH * np.expm1(GRADING * t) / np.expm1(GRADING)
    width, middle = np.diff(edges), (edges[:-1] + edges[1:]) / 2
    wood = Column(width * VOIDS, range(CELLS - 1), range(1, CELLS), k / np.diff(middle), [0], [k / middle[0]])
    return wood, edges, middle


def front(s, middle, edges):
    """Deepest place at which the saturation is that of the front, straight between the middles of the cells, m."""
    deep = np.nonzero(s >= SCALE_OF_FRONT)[0]
    if deep.size == 0:
        return 0.0
    i = deep[-1]
    if i == s.size - 1:
        return float(edges[-1])
    return float(middle[i] + (middle[i + 1] - middle[i]) * (s[i] - SCALE_OF_FRONT) / (s[i] - s[i + 1]))


def run(k, stages, water):
    wood, edges, middle = column(k)
    n = CELLS
    y = np.concatenate([np.full(n, water), np.full(n, 1 - water)])
    rows, whole = [], wood.voids.sum()
    for contact, minutes, start, end in stages:
        seconds = 60 * minutes
        answer = solve_ivp(
            wood.under(contact, seconds, 1e3 * start, 1e3 * end), (0, seconds), y, method="BDF", rtol=TOLERANCE, atol=TOLERANCE * 1e-2,
            jac_sparsity=wood.pattern(), first_step=1e-6,
        )
        assert answer.success, answer.message
        y = answer.y[:, -1]
        s = y[:n]
        rows.append({
            "contact": contact, "minutes": minutes, "fromKPa": start, "toKPa": end,
            "liquidShare": float((s * wood.voids).sum() / whole), "airShare": float((y[n:] * wood.voids).sum() / whole), "frontMm": 1e3 * front(s, middle, edges),
        })
    return rows


def main():
    runs = []
    for name, stages in schedules():
        for k, water in [(k, 0.0) for k in PERMEABILITIES] + WET:
            print(name, k, water, file=sys.stderr)
            runs.append({"schedule": name, "permeabilityM2": k, "waterShare": water, "stages": run(k, stages, water)})
    json.dump({
        "script": "flow_schedules.py", "python": sys.version.split()[0], "scipy": scipy.__version__, "tolerance": TOLERANCE,
        "depthMm": 1e3 * DEPTH, "cells": CELLS, "grading": GRADING, "voids": VOIDS, "frontShare": SCALE_OF_FRONT, "runs": runs,
    }, sys.stdout, indent=1)


if __name__ == "__main__":
    main()
