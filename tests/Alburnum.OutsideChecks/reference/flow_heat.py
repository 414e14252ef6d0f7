"""Wood that hot solution or steam warms, in one dimension, by a general-purpose solver: uptake, air, front and temperatures at the end of every stage.

Run:  /usr/bin/python3 flow_heat.py > flow_heat.json     (Debian python3-scipy; some minutes)

The column of flow_schedules.py with a third unknown in each cell, its temperature. Heat is conducted and carried by the liquid; liquid flows the
more easily the warmer it is; the air inside takes more room as it warms. Steam condenses and presses no air in: above the atmosphere only what
exceeds the pressure of saturated steam counts. What holds and conducts heat is written out here by itself, from the
formulas of docs/science/flow.md.
"""

import json
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import bmat

from flow_reference import AIR, ATMOSPHERE, LIQUID, air_mobility, capillary, liquid_mobility
from flow_schedules import CELLS, DEPTH, GRADING, SCALE_OF_FRONT, VOIDS, column, front

TOLERANCE = 1e-6
DRY, MOISTURE = 430.0, 20.0  # kg/m³ of oven-dry wood; water in its walls, %
LIQUID_HEAT = 4.18e6


def water(celsius):
    return 2.414e-5 * 10 ** (247.8 / (celsius + 133.15))


def saturated(celsius):
    """Pressure of saturated steam, Pa (Wagner and Pruss 1993)."""
    t = 1 - (celsius + 273.15) / 647.096
    terms = -7.85951783 * t + 1.84408259 * t**1.5 - 11.7866497 * t**3 + 22.6807411 * t**3.5 - 15.9618719 * t**4 + 1.80122502 * t**7.5
    return 22.064e6 * np.exp(647.096 / (celsius + 273.15) * terms)


def walls():
    m, t = MOISTURE, 313.15
    return 1e3 * ((0.1031 + 0.003867 * t + 4.18 * m / 100) / (1 + m / 100) + m * (-0.06191 + 2.36e-4 * t - 1.33e-4 * m)) * DRY * (1 + m / 100)


def conductivity(s):
    return DRY / 1e3 * (0.1941 + 0.004064 * (MOISTURE + 100 * 1e3 * s * VOIDS / DRY)) + 0.01864


def rates(wood, widths, middle, k, stage, first):
    """What changes in a second; the vessel's pressure runs straight, its temperature stands."""
    n = CELLS
    contact, minutes, start, end, outside = stage
    bulk = widths
    shape = 1 / np.diff(middle)
    viscosity = LIQUID  # at the solution's own temperature, as the program gives it

    def of(t, y):
        s, m, c = y[:n], y[n : 2 * n], y[2 * n :]
        warm = (c + 273.15) / (first["wood"] + 273.15)
        p = m * warm * ATMOSPHERE / (1 - s)
        liquid = p - capillary(s)
        thin = water(first["solution"]) / water(c)
        lw, la = liquid_mobility(s) * thin, air_mobility(s) / warm
        drop = liquid[:-1] - liquid[1:]
        w = wood.conductance * np.where(drop >= 0, lw[:-1], lw[1:]) * drop
        drop = p[:-1] - p[1:]
        a = wood.conductance * np.where(drop >= 0, la[:-1] * p[:-1], la[1:] * p[1:]) * drop / ATMOSPHERE
        vessel = 1e3 * (start + (end - start) * t / (60 * minutes))
        if contact == "air" and outside is not None and outside > 100 and vessel > ATMOSPHERE:
            vessel = max(ATMOSPHERE, vessel - saturated(outside))
        hot = first["wood"] if outside is None else outside
        wet = water(first["solution"]) / water(hot) / viscosity if contact == "liquid" else 0.0
        dry = (first["wood"] + 273.15) / (hot + 273.15) / AIR if contact == "air" else 0.0
        drop = vessel - liquid[0]
        w0 = wood.face[0] * (wet if drop >= 0 else lw[0]) * drop
        drop = vessel - p[0]
        a0 = wood.face[0] * (dry * vessel if drop >= 0 else la[0] * p[0]) * drop / ATMOSPHERE
        heat = walls() * bulk + LIQUID_HEAT * s * wood.voids
        lam = conductivity(s)
        conducted = shape * (lam[:-1] + lam[1:]) / 2 * np.diff(c)
        gain = np.zeros(n)
        gain[:-1] += conducted + LIQUID_HEAT * np.maximum(0, -w) * np.diff(c)
        gain[1:] += -conducted - LIQUID_HEAT * np.maximum(0, w) * np.diff(c)
        if outside is not None:
            gain[0] += (lam[0] / middle[0] + LIQUID_HEAT * max(0, w0)) * (outside - c[0])
        w, a = np.concatenate([[w0], w, [0]]), np.concatenate([[a0], a, [0]])
        return np.concatenate([(w[:-1] - w[1:]) / wood.voids, (a[:-1] - a[1:]) / wood.voids, gain / heat])

    return of


def run(k, stages, first):
    wood, edges, middle = column(k)
    widths, n = np.diff(edges), CELLS
    near = wood.pattern()[:n, :n] != 0
    pattern = bmat([[near] * 3] * 3)
    y = np.concatenate([np.zeros(n), np.ones(n), np.full(n, float(first["wood"]))])
    rows, whole = [], wood.voids.sum()
    for stage in stages:
        seconds = 60 * stage[1]
        scale = np.concatenate([np.full(2 * n, TOLERANCE * 1e-2), np.full(n, 1e-4)])
        answer = solve_ivp(
            rates(wood, widths, middle, k, stage, first), (0, seconds), y, method="BDF", rtol=TOLERANCE, atol=scale, jac_sparsity=pattern, first_step=1e-6
        )
        assert answer.success, answer.message
        y = answer.y[:, -1]
        s, c = y[:n], y[2 * n :]
        rows.append({
            "contact": stage[0], "minutes": stage[1], "fromKPa": stage[2], "toKPa": stage[3], "celsius": stage[4],
            "liquidShare": float((s * wood.voids).sum() / whole), "airShare": float((y[n : 2 * n] * wood.voids).sum() / whole),
            "frontMm": 1e3 * front(s, middle, edges), "cellsCelsius": [float(c[i]) for i in range(0, n, 10)] + [float(c[-1])],
        })
    return rows


def full_cell(solution):
    return [
        ("air", 10.0, 101.325, 15.0, None), ("air", 35.0, 15.0, 15.0, None), ("liquid", 10.0, 15.0, 15.0, solution), ("liquid", 10.0, 15.0, 1300.0, solution),
        ("liquid", 120.0, 1300.0, 1300.0, solution), ("liquid", 10.0, 1300.0, 101.3, solution), ("air", 25.0, 101.3, 20.0, None), ("air", 30.0, 20.0, 101.3, None),
    ]


def main():
    steamed = [("air", 10.0, 101.325, 186.0, 118.0), ("air", 240.0, 186.0, 186.0, 118.0), ("air", 10.0, 186.0, 101.325, None)]
    baths = [("liquid", 360.0, 101.325, 101.325, 85.0), ("liquid", 360.0, 101.325, 101.325, 25.0)]
    cases = [("hot solution", full_cell(65.0), {"wood": 10.0, "solution": 65.0}), ("cold solution, warm wood", full_cell(5.0), {"wood": 40.0, "solution": 5.0}),
             ("steamed first", steamed + full_cell(30.0), {"wood": 15.0, "solution": 30.0}), ("hot and cold bath", baths, {"wood": 20.0, "solution": 25.0})]
    runs = []
    for name, stages, first in cases:
        for k in [1e-19, 1e-18, 1e-17, 1e-16, 1e-14]:
            print(name, k, file=sys.stderr)
            runs.append({"schedule": name, "permeabilityM2": k, "woodCelsius": first["wood"], "solutionCelsius": first["solution"], "stages": run(k, stages, first)})
    json.dump({
        "script": "flow_heat.py", "python": sys.version.split()[0], "scipy": scipy.__version__, "tolerance": TOLERANCE, "depthMm": 1e3 * DEPTH, "cells": CELLS,
        "grading": GRADING, "voids": VOIDS, "frontShare": SCALE_OF_FRONT, "dryKgPerM3": DRY, "moisturePercent": MOISTURE, "runs": runs,
    }, sys.stdout, indent=1)


if __name__ == "__main__":
    main()
