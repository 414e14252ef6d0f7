"""Average run lengths of CUSUM and EWMA charts by collocation, with nothing but Python's standard library.

Run:   /usr/bin/python3 run_lengths.py > run-lengths.csv   (half a minute)
Needs: Python 3.11. The output is stored; the tests read it and need no Python.
The run-length integral equation is solved for a sum of Chebyshev polynomials that fulfils it at Chebyshev points; its
integrals are sums by Simpson's rule. The program itself takes quadrature nodes as unknowns, so that the two share the
equation and nothing else.
Each line: what, then numbers as said beside each.
"""
import math
import sys
from operator import mul

PANELS = 1200


def line(what, *numbers):
    print(",".join([what] + [repr(float(number)) for number in numbers]))


def density(z):
    return math.exp(-z * z / 2) / math.sqrt(2 * math.pi)


def below(z):
    return math.erfc(-z / math.sqrt(2)) / 2


def chebyshev(terms, low, high, y):
    """T0 to T(terms − 1) of y scaled from low–high to −1–1."""
    x = (2 * y - low - high) / (high - low)
    values = [1.0, x]
    while len(values) < terms:
        values.append(2 * x * values[-1] - values[-2])
    return values[:terms]


def solved(rows, right):
    """Gaussian elimination with the largest pivot."""
    size = len(rows)
    a = [row + [value] for row, value in zip(rows, right)]
    for i in range(size):
        p = max(range(i, size), key=lambda r: abs(a[r][i]))
        a[i], a[p] = a[p], a[i]
        for r in range(i + 1, size):
            f = a[r][i] / a[i][i]
            if f:
                a[r] = [u - f * v for u, v in zip(a[r], a[i])]
    x = [0.0] * size
    for i in reversed(range(size)):
        x[i] = (a[i][size] - sum(map(mul, a[i][i + 1 : size], x[i + 1 :]))) / a[i][i]
    return x


def run_length(low, high, start, kernel, rest, terms):
    """L(z) = 1 + rest(z)·L(low) + ∫ L(y)·kernel(z, y) dy, at start."""
    step = (high - low) / PANELS
    at = [low + step * i for i in range(PANELS + 1)]
    weight = [step / 3 * (1 if i in (0, PANELS) else 4 if i % 2 else 2) for i in range(PANELS + 1)]
    columns = list(zip(*(chebyshev(terms, low, high, y) for y in at)))
    first = chebyshev(terms, low, high, low)
    nodes = [(low + high) / 2 + (high - low) / 2 * math.cos(math.pi * (i + 0.5) / terms) for i in range(terms)]
    rows = []
    for z in nodes:
        weighted = [w * kernel(z, y) for w, y in zip(weight, at)]
        own, stays = chebyshev(terms, low, high, z), rest(z)
        rows.append([o - stays * f - sum(map(mul, weighted, column)) for o, f, column in zip(own, first, columns)])
    return sum(map(mul, solved(rows, [1.0] * terms), chebyshev(terms, low, high, start)))


def cusum(k, h, shift, terms=40):
    return run_length(0.0, h, 0.0, lambda z, y: density(y + k - z - shift), lambda z: below(k - z - shift), terms)


def ewma(lam, width, shift, terms=48):
    limit = width * math.sqrt(lam / (2 - lam))
    return run_length(
        -limit, limit, 0.0, lambda z, y: density((y - (1 - lam) * z) / lam - shift) / lam, lambda z: 0.0, terms
    )


def width_for(lam, charges):
    low, high = 1.0, 3.5
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if ewma(lam, middle, 0.0) < charges else (low, middle)
    return (low + high) / 2


print(f"# python {sys.version.split()[0]}")

# allowance, interval, shift, charges; one-sided.
for k, h, shifts in [
    (0.0, 10.0, (-0.25, -0.125, 0.0, 0.125, 0.25, 0.5, 0.75, 1.0)),
    (0.5, 3.0, (-0.5, 0.0, 0.5)),
    (0.5, 4.0, (0.25, 0.75, 1.5, 3.0, 4.0)),
]:
    for shift in shifts:
        line("cusum", k, h, shift, cusum(k, h, shift))

# allowance, interval, shift, charges; two one-sided charts together, whose signals never coincide.
for shift in (0.0, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0):
    line("cusum-both", 0.5, 4.0, shift, 1 / (1 / cusum(0.5, 4.0, shift) + 1 / cusum(0.5, 4.0, -shift)))

# weight, limit, shift, charges.
for lam, width in [(0.5, 2.0), (0.05, 2.0), (0.5, 3.071), (0.03, 2.437)]:
    for shift in (0.0, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0):
        line("ewma", lam, width, shift, ewma(lam, width, shift))

# weight, charges to a false signal, limit.
for lam in (0.05, 0.10, 0.15, 0.20, 0.25):
    line("ewma-limit", lam, 250, width_for(lam, 250))
