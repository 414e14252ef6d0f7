"""Product carried into wood and out again by liquid, in balance with the walls, by finite volumes.

Run:  /usr/bin/python3 sorption.py > sorption.csv     (Debian 12: python3-scipy 1.10.1; a minute)
A way of length 1 is filled evenly in time to the shares a + b x of its voids, then emptied evenly to c + d x. Cells, upwind, method of lines (solve_ivp, RK23),
1000 and 2000 cells with the difference taken out. Walls: share at full strength, and bend, of Langmuir's law.
Each line: what, narrowing, a, b, c, d, share, bend; product within 0.05, 0.1, 0.2, 0.4 and 1 of the way, in voids full of the solution.
"""
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp

print(f"# scipy {scipy.__version__}, numpy {np.__version__}, python {sys.version.split()[0]}")
DEPTHS = (0.05, 0.1, 0.2, 0.4, 1.0)


def strength(mass, liquid, walls, share, bend):
    """mass = liquid g + walls share (1 + bend) g / (1 + bend g), solved for g."""
    first = share * (1 + bend) * walls
    if bend == 0:
        return mass / np.maximum(liquid + first, 1e-300)
    b = liquid + first - bend * mass
    return 2 * mass / (b + np.sqrt(b * b + 4 * bend * liquid * mass))


def run(cells, narrowing, a, b, c, d, share, bend):
    edges = np.linspace(0, 1, cells + 1)
    within = (edges - narrowing * edges**2 / 2) / (1 - narrowing / 2)
    voids = np.diff(within)
    x = (edges[1:] + edges[:-1]) / 2
    full, end = (a + b * x) * voids, (c + d * x) * voids
    inward = np.append(np.cumsum(full[::-1])[::-1], 0)
    outward = np.append(np.cumsum((full - end)[::-1])[::-1], 0)
    assert (outward >= -1e-12).all()

    def coming(t, mass):
        g = strength(mass, t * full, voids, share, bend)
        return inward[:-1] * np.append(1, g[:-1]) - inward[1:] * g

    def going(t, mass):
        g = strength(mass, full + t * (end - full), voids, share, bend)
        return outward[1:] * np.append(g[1:], 0) - outward[:-1] * g

    filled = solve_ivp(coming, (0, 1), np.zeros(cells), method="RK23", rtol=1e-4, atol=1e-9).y[:, -1]
    left = solve_ivp(going, (0, 1), filled, method="RK23", rtol=1e-4, atol=1e-9).y[:, -1]
    return np.interp(DEPTHS, edges, np.append(0, np.cumsum(left)))


for case in [
    (0, 0.8, 0, 0.8, 0, 1.0, 0), (0, 0.8, 0, 0.4, 0, 1.0, 0), (0, 0.9, -0.4, 0.3, 0.1, 0.5, 0), (0, 0.8, 0, 0.4, 0, 1.0, 4), (0, 0.8, 0, 0.4, 0, 1.0, 30),
    (0, 0.9, -0.5, 0.5, -0.2, 2.0, 10), (0, 0.9, -0.5, 0.2, 0.0, 0.3, 3), (1, 0.8, 0, 0.4, 0, 1.0, 0), (1, 0.9, -0.4, 0.3, 0.05, 1.0, 8), (0.5, 0.85, -0.2, 0.5, 0.0, 3.0, 2),
]:
    coarse, fine = run(1000, *case), run(2000, *case)
    print(",".join(["product", *(repr(float(v)) for v in (*case, *(2 * fine - coarse)))]), flush=True)
