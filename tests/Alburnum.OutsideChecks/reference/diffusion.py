"""A salt spreading through half a sheet, by Fourier series in 30 digits.

Run:  /usr/bin/python3 diffusion.py > diffusion.csv     (Debian 12: python3-mpmath 1.2.1)
Each line: what, half thickness mm, border mm, D m2/s, days; values (the border's loading is 1).
"""
import sys

import mpmath
from mpmath import cos, exp, mpf, pi, sin

mpmath.mp.dps = 30
print(f"# mpmath {mpmath.__version__}, python {sys.version.split()[0]}")
print("# sealed: loading at the face, loading at the middle, depth in mm where the loading is a tenth (half the thickness where it never falls to that)")
print("# wet: salt still held, as a share of what there was")
TERMS = 400


def sealed(x, h, b, tau):
    return b / h + sum(2 / (n * pi) * sin(n * pi * b / h) * cos(n * pi * x / h) * exp(-((n * pi) ** 2) * tau) for n in range(1, TERMS))


def held(h, b, tau):
    total = mpf(0)
    for n in range(TERMS):
        root = (2 * n + 1) * pi / 2
        total += 2 * (1 - cos(root * b / h)) / root * exp(-(root**2) * tau) / root
    return total * h


for h, b, d, days in [
    (50, 6, 1e-11, 30), (50, 6, 1e-11, 180), (50, 12, 1e-11, 60), (37.5, 3, 5e-12, 90), (25, 10, 2e-11, 30), (100, 20, 1e-11, 365),
    (47, 5, 3e-11, 14), (60, 30, 1e-12, 200), (20, 4, 8e-12, 60), (75, 8, 2e-11, 120),
]:
    h, b = mpf(h), mpf(b)
    tau = mpf(d) * mpf(days) * 86400 * mpf(10) ** 6 / h**2
    middle = sealed(h, h, b, tau)
    depth = h if middle >= mpf("0.1") else mpmath.findroot(lambda x: sealed(x, h, b, tau) - mpf("0.1"), (mpf(0), h), solver="bisect", tol=1e-20, maxsteps=200)
    print(",".join(["sealed", *(repr(float(v)) for v in (h, b, d, days, sealed(mpf(0), h, b, tau), middle, depth))]))

for h, b, d, days in [(50, 6, 1e-11, 30), (50, 12, 1e-11, 60), (37.5, 3, 5e-12, 90), (25, 25, 2e-11, 30), (100, 20, 1e-11, 365), (47, 47, 3e-12, 200), (20, 4, 8e-12, 10), (75, 40, 2e-11, 120)]:
    h, b = mpf(h), mpf(b)
    tau = mpf(d) * mpf(days) * 86400 * mpf(10) ** 6 / h**2
    print(",".join(["wet", *(repr(float(v)) for v in (h, b, d, days, held(h, b, tau) / b))]))
