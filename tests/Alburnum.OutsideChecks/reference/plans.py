"""Sampling plans, capability and batches of doubtful readings a second time: SciPy and plain enumeration.

Run:  /usr/bin/python3 plans.py > plans.csv     (Debian 12: python3-scipy 1.10.1, python3-mpmath)
Each line: what, arguments, values.
"""
import itertools
import math
import sys

import mpmath
import numpy as np
import scipy
from scipy import optimize, stats

print(f"# scipy {scipy.__version__}, mpmath {mpmath.__version__}, python {sys.version.split()[0]}")
print("# double: n1, Ac1, Re1, n2, Ac2, failing share; acceptance, mean pieces cut")
print("# sequential: p1, alpha, p2, beta, last piece, failing share; acceptance, mean pieces cut")
print("# variables: p1, alpha, p2, beta; n, k, acceptance at p1, acceptance at p2")
print("# capability: charges, mean, sd, limit; index, lower bound at 95 %")
print("# doubtful: how many, probability that each fails, k; probability of at most k failures")
print("# quantile: how many, values, share; quantile of type 7")


def out(what, *values):
    print(",".join([what] + [repr(float(v)) for v in values]))


for n1, a1, r1, n2, a2 in [(8, 0, 2, 8, 1), (13, 0, 3, 13, 3), (20, 1, 4, 20, 4), (32, 2, 5, 32, 6), (50, 3, 7, 50, 8)]:
    for p in (0.02, 0.08, 0.2):
        first, second = stats.binom(n1, p), stats.binom(n2, p)
        accepted = sum(first.pmf(i) for i in range(a1 + 1))
        again = [i for i in range(a1 + 1, r1)]
        accepted += sum(first.pmf(i) * sum(second.pmf(j) for j in range(a2 - i + 1)) for i in again if i <= a2)
        out("double", n1, a1, r1, n2, a2, p, accepted, n1 + n2 * sum(first.pmf(i) for i in again))

for p1, alpha, p2, beta, last in [(0.05, 0.05, 0.25, 0.10, 40), (0.01, 0.05, 0.10, 0.10, 120), (0.02, 0.10, 0.15, 0.10, 60)]:
    k = math.log(p2 * (1 - p1) / (p1 * (1 - p2)))
    slope, h1, h2 = math.log((1 - p1) / (1 - p2)) / k, math.log((1 - alpha) / beta) / k, math.log((1 - beta) / alpha) / k
    for p in (p1, (p1 + p2) / 2, p2):
        going, accepted, mean = {0: mpmath.mpf(1)}, mpmath.mpf(0), mpmath.mpf(0)
        for n in range(1, last + 1):
            mean += sum(going.values())
            then = {}
            for d, q in going.items():
                then[d] = then.get(d, 0) + q * (1 - mpmath.mpf(p))
                then[d + 1] = then.get(d + 1, 0) + q * mpmath.mpf(p)
            going = {}
            for d, q in then.items():
                # At the last piece the middle line decides.
                if n == last:
                    accepted += q if d <= slope * n else 0
                elif d <= slope * n - h1:
                    accepted += q
                elif d < slope * n + h2:
                    going[d] = q
        out("sequential", p1, alpha, p2, beta, last, p, accepted, mean)

for p1, alpha, p2, beta in [(0.01, 0.05, 0.08, 0.10), (0.02, 0.05, 0.10, 0.10), (0.05, 0.05, 0.20, 0.10), (0.10, 0.10, 0.30, 0.10), (0.005, 0.05, 0.05, 0.05), (0.05, 0.05, 0.25, 0.05)]:
    for n in range(2, 2000):
        shift = lambda p: stats.norm.ppf(1 - p) * math.sqrt(n)
        # k such that the consumer is protected exactly: P(T > k sqrt n) = beta at p2.
        t = optimize.brentq(lambda x: stats.nct.sf(x, n - 1, shift(p2)) - beta, -50, 500, xtol=1e-12)
        if t >= 0 and stats.nct.sf(t, n - 1, shift(p1)) >= 1 - alpha:
            out("variables", p1, alpha, p2, beta, n, t / math.sqrt(n), stats.nct.sf(t, n - 1, shift(p1)), stats.nct.sf(t, n - 1, shift(p2)))
            break

for n, mean, sd, limit in [(10, 8.2, 1.1, 6), (25, 7.5, 0.9, 6), (50, 9.0, 2.0, 6), (100, 6.4, 0.8, 6), (12, 5.5, 1.0, 6), (200, 12.0, 1.5, 8)]:
    distance = (mean - limit) / sd
    shift = optimize.brentq(lambda d: stats.nct.cdf(distance * math.sqrt(n), n - 1, d) - 0.95, distance * math.sqrt(n) - 60, distance * math.sqrt(n) + 60, xtol=1e-11)
    out("capability", n, mean, sd, limit, distance / 3, shift / math.sqrt(n) / 3)

random = np.random.default_rng(20261129)
for count in (3, 5, 8, 8, 10, 12):
    p = random.uniform(0, 1, count).round(3) ** 2
    for k in (1, 3):
        total = mpmath.mpf(0)
        for fails in itertools.product((0, 1), repeat=count):
            if sum(fails) <= k:
                total += mpmath.fprod(mpmath.mpf(float(q)) if f else 1 - mpmath.mpf(float(q)) for f, q in zip(fails, p))
        out("doubtful", count, *p, k, total)

for count in (4, 7, 12, 25):
    values = random.normal(7, 2, count).round(3)
    for share in (0.05, 0.5):
        out("quantile", count, *values, share, np.quantile(values, share, method="linear"))
