"""A salt spreading in whole sections: rounds by the series of Bessel functions in 30 digits, sawn pieces by explicit differences in two dimensions.

Run:  /usr/bin/python3 diffusion_sections.py > diffusion_sections.csv     (Debian 12: python3-mpmath)
Round: what, radius mm, border mm, D m2/s, days; values. Sawn: half thickness mm, half width mm, border mm, D m2/s, days stored, days wet; values.
The border's loading is 1.
"""
import sys

import mpmath
from mpmath import besselj, besseljzero, exp, mpf

mpmath.mp.dps = 30
print(f"# mpmath {mpmath.__version__}, python {sys.version.split()[0]}")
print("# round-sealed: loading at the rim, loading at the middle")
print("# round-wet: salt still held, as a share of what there was")
print("# sawn: after store, loading in the middle of the broad face and in the middle of the piece; after the wet, loading in the middle and salt still held as a share")
TERMS = 150
FLAT = [besseljzero(1, n) for n in range(1, TERMS + 1)]
FREE = [besseljzero(0, n) for n in range(1, TERMS + 1)]


def at(r, core, tau):
    total = 1 - core**2
    for z in FLAT:
        total += -2 * core * besselj(1, z * core) / (z * besselj(0, z) ** 2) * besselj(0, z * r) * exp(-(z**2) * tau)
    return total


def held(core, tau):
    total = mpf(0)
    for z in FREE:
        start = 2 / besselj(1, z) ** 2 / z * (besselj(1, z) - core * besselj(1, z * core))
        total += start * 2 * besselj(1, z) / z * exp(-(z**2) * tau)
    return total / (1 - core**2)


for r, b, d, days in [(25, 2, 6.8e-11, 42), (25, 2, 2e-11, 42), (60, 10, 1e-11, 60), (60, 10, 1e-11, 400), (100, 15, 3e-11, 120), (40, 30, 5e-12, 90)]:
    core, tau = 1 - mpf(b) / r, mpf(d) * mpf(days) * 86400 * mpf(10) ** 6 / mpf(r) ** 2
    print(",".join(["round-sealed", *(repr(float(v)) for v in (r, b, d, days, at(mpf(1), core, tau), at(mpf(0), core, tau)))]))
for r, b, d, days in [(25, 2, 2e-11, 10), (60, 10, 1e-11, 60), (60, 60, 1e-11, 200), (100, 15, 3e-11, 120)]:
    core, tau = 1 - mpf(b) / r, mpf(d) * mpf(days) * 86400 * mpf(10) ** 6 / mpf(r) ** 2
    print(",".join(["round-wet", *(repr(float(v)) for v in (r, b, d, days, held(core, tau)))]))


def lie(field, nx, ny, cell, dt, seconds, d, wet):
    steps = max(1, int(seconds / dt + 0.5))
    k = d * 1e6 * seconds / steps / cell**2
    for _ in range(steps):
        rows = []
        for j in range(ny):
            row, up, down = field[j], field[max(0, j - 1)], field[min(ny - 1, j + 1)]
            new = [row[i] + k * (row[max(0, i - 1)] + row[min(nx - 1, i + 1)] + up[i] + down[i] - 4 * row[i]) for i in range(nx)]
            if wet:
                new[0] -= 2 * k * row[0]
                if j == 0:
                    new = [n - 2 * k * o for n, o in zip(new, row)]
            rows.append(new)
        field = rows
    return field


# A quarter of the section; faces at i = 0 and j = 0.
for thick, wide, b, d, stored, wet in [(25, 25, 2.5, 1e-11, 60, 20), (25, 50, 5, 1e-11, 120, 30), (20, 30, 5, 2e-11, 200, 60), (37.5, 37.5, 7.5, 5e-12, 300, 100)]:
    cell = 0.625 if thick < 30 else 0.9375
    if thick == 20:
        cell = 0.5
    nx, ny = round(thick / cell), round(wide / cell)
    field = [[1.0 if i * cell < b - 1e-9 or j * cell < b - 1e-9 else 0.0 for i in range(nx)] for j in range(ny)]
    total = sum(map(sum, field))
    dt = 0.2 * cell**2 / (d * 1e6)
    dry = lie(field, nx, ny, cell, dt, stored * 86400, d, False)
    soaked = lie(dry, nx, ny, cell, dt, wet * 86400, d, True)
    values = (thick, wide, b, d, stored, wet, dry[-1][0], dry[-1][-1], soaked[-1][-1], sum(map(sum, soaked)) / total)
    print(",".join(["sawn", *(repr(float(v)) for v in values)]))
