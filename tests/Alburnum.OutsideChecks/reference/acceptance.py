"""A second implementation of the acceptance statistics, with SciPy.

Run:   /usr/bin/python3 acceptance.py > acceptance-scipy.csv
Takes some minutes. Needs: Debian 12 package python3-scipy (1.10.1). The output is stored; the tests read it and need no Python.
Each line: what, argument 1 .. argument 5 (empty where unused), value.
"""
import math
import sys

import numpy as np
import scipy
from scipy import integrate, optimize, stats


def out(what, *args_and_value):
    *args, value = args_and_value
    args = list(args) + [""] * (5 - len(args))
    print(",".join([what] + [repr(a) if a != "" else "" for a in args] + [repr(float(value))]))


print(f"# scipy {scipy.__version__}, python {sys.version.split()[0]}")
print("what,a,b,c,d,e,value")

# Hypergeometric: at most k failing in n out of lot with failing.
for lot, failing, n, k in [
    (50, 5, 10, 0), (50, 5, 10, 1), (50, 5, 5, 1), (200, 20, 20, 2), (500, 50, 50, 10), (500, 125, 8, 2), (1000, 300, 50, 21),
    (100000, 2500, 800, 14), (100000, 60000, 1250, 760), (7, 3, 5, 2), (100000, 3, 50000, 1), (12345, 678, 1234, 60),
]:
    out("hypergeometric", lot, failing, n, k, stats.hypergeom.cdf(k, lot, failing, n))

for n, p, k in [
    (8, 0.25, 2), (8, 0.25, 5), (68, 0.01213, 2), (125, 0.1, 2), (52, 0.05, 3), (2000, 0.01, 21), (50, 0.3, 21), (3150, 0.0001, 1),
    (100000, 0.5, 50050), (20, 0.999, 19),
]:
    out("binomial", n, p, k, stats.binom.cdf(k, n, p))

for k, mean in [(0, 0.1), (21, 12.5), (5, 4.2), (44, 30.0), (760, 750.0)]:
    out("poisson", k, mean, stats.poisson.cdf(k, mean))

for x, n, level in [(4, 20, 0.95), (0, 10, 0.975), (18, 20, 0.975), (3, 25, 0.975), (125, 125, 0.975), (7, 8, 0.95), (499, 500, 0.99)]:
    out("clopper-lower", x, n, level, 0.0 if x == 0 else stats.beta.ppf(1 - level, x, n - x + 1))
    out("clopper-upper", x, n, level, 1.0 if x == n else stats.beta.ppf(level, x + 1, n - x))

# Lower bound on the conforming share of a lot, by trying every lot.
for conforming, n, lot, level in [(10, 10, 500, 0.95), (7, 8, 40, 0.95), (45, 50, 500, 0.9), (3, 5, 7, 0.95), (20, 20, 20, 0.95)]:
    best = 0
    for failing in range(n - conforming, lot - conforming + 1):
        if stats.hypergeom.cdf(n - conforming, lot, failing, n) > 1 - level:
            best = failing
    out("lot-lower", conforming, n, lot, level, (lot - best) / lot)

# Non-central t and one-sided tolerance factors.
for nu, delta, t in [(1, 0.5, 2.0), (4, 3.678, 9.4), (9, 5.2, 4.0), (42, 8.4037, 12.29), (99, 16.4, 18.0), (999, 52.0, 52.5), (3, -2.0, -1.0), (7, 0.0, 1.5)]:
    out("nct", nu, delta, t, stats.nct.cdf(t, nu, delta))
for share in (0.75, 0.90, 0.95, 0.99):
    for confidence in (0.50, 0.75, 0.90, 0.95, 0.99):
        for n in (2, 3, 4, 5, 8, 10, 15, 20, 30, 43, 50, 100, 500):
            root = math.sqrt(n)
            shift = stats.norm.ppf(share) * root
            # The quantile solved on an adaptive integral of the definition, since nct.ppf of this version drifts in the tails.
            def cdf(x, nu=n - 1, d=shift):
                f = lambda s: stats.norm.cdf(x * s - d) * 2 * nu * s * stats.chi2.pdf(nu * s * s, nu)
                turn = d / x if x else 1.0
                cuts = sorted({0.0, max(0.0, turn), 1.0, 1 + 14 / math.sqrt(nu)})
                return sum(integrate.quad(f, a, b, epsabs=1e-12, epsrel=1e-12, limit=400)[0] for a, b in zip(cuts, cuts[1:]))
            high = 2 * abs(shift) + 5
            while cdf(high) < confidence:
                high *= 2
            out("tolerance-factor", n, share, confidence, optimize.brentq(lambda x: cdf(x) - confidence, -5, high, xtol=1e-12) / root)

# Smallest single plan by brute force over n and c.
for p1, a, p2, b, lot in [(0.05, 0.05, 0.25, 0.10, 0), (0.10, 0.05, 0.30, 0.10, 0), (0.02, 0.05, 0.08, 0.10, 0), (0.05, 0.05, 0.25, 0.10, 120), (0.10, 0.10, 0.40, 0.10, 60), (0.05, 0.05, 0.20, 0.05, 1000)]:
    found = None
    for n in range(1, 400):
        if lot and n > lot:
            break
        if lot:
            k1, k2 = math.floor(p1 * lot + 1e-9), math.ceil(p2 * lot - 1e-9)
            pa = lambda c, k: stats.hypergeom.cdf(c, lot, k, n)
            ok = [c for c in range(n) if pa(c, k2) <= b and pa(c, k1) >= 1 - a]
        else:
            ok = [c for c in range(n) if stats.binom.cdf(c, n, p2) <= b and stats.binom.cdf(c, n, p1) >= 1 - a]
        if ok:
            found = (n, ok[0])
            break
    out("smallest-plan-n", p1, a, p2, b, lot, found[0])
    out("smallest-plan-c", p1, a, p2, b, lot, found[1])

# Beta-binomial reading: probability that at least a share of the lot conforms (belief 1/2, 1/2 before).
for failures, cut, lot, share in [(0, 10, 100, 0.75), (1, 8, 500, 0.75), (2, 8, 40, 0.6), (5, 50, 500, 0.85)]:
    may = math.floor((1 - share) * lot + 1e-9) - failures
    out("betabinomial", failures, cut, lot, share, stats.betabinom.cdf(may, lot - cut, 0.5 + failures, 0.5 + cut - failures))

# Global risks of a guard band by integrating the joint density over both axes.
for mean, sd, u, limit, guard in [(8.0, 1.5, 0.5, 6.0, 0.0), (8.0, 1.5, 0.5, 6.0, 0.8224), (6.5, 0.8, 0.4, 6.0, -0.3), (12.0, 2.0, 1.0, 10.0, 1.0)]:
    accept = limit + guard
    consumer = integrate.quad(lambda v: stats.norm.pdf(v, mean, sd) * stats.norm.sf(accept, v, u), mean - 12 * sd, limit, epsabs=1e-13, limit=400)[0]
    producer = integrate.quad(lambda v: stats.norm.pdf(v, mean, sd) * stats.norm.cdf(accept, v, u), limit, mean + 12 * sd, epsabs=1e-13, limit=400)[0]
    out("consumer-risk", mean, sd, u, limit, guard, consumer)
    out("producer-risk", mean, sd, u, limit, guard, producer)

# Censored normal by direct maximisation. Readings are fixed here and repeated in the test.
readings = [(4.1, 0), (5.6, 0), (7.2, 0), (6.3, 0), (2.0, -1), (2.0, -1), (10.0, 1), (8.4, 0), (5.0, 0), (10.0, 1)]


def loss(q):
    m, s = q[0], math.exp(q[1])
    total = 0.0
    for value, kind in readings:
        z = (value - m) / s
        total -= stats.norm.logpdf(z) - math.log(s) if kind == 0 else (stats.norm.logcdf(z) if kind < 0 else stats.norm.logsf(z))
    return total


fit = optimize.minimize(loss, [6.0, 0.7], method="Nelder-Mead", options=dict(xatol=1e-10, fatol=1e-13, maxiter=20000))
out("censored-mean", fit.x[0])
out("censored-sd", math.exp(fit.x[1]))
h = 1e-4
f = lambda m, s: loss([m, math.log(s)])
m, s = fit.x[0], math.exp(fit.x[1])
H = np.array([
    [(f(m + h, s) - 2 * f(m, s) + f(m - h, s)) / h**2, (f(m + h, s + h) - f(m + h, s - h) - f(m - h, s + h) + f(m - h, s - h)) / (4 * h * h)],
    [0, (f(m, s + h) - 2 * f(m, s) + f(m, s - h)) / h**2],
])
H[1, 0] = H[0, 1]
C = np.linalg.inv(H)
out("censored-mean-u", math.sqrt(C[0, 0]))
out("censored-sd-u", math.sqrt(C[1, 1]))

# Average run lengths by a Markov chain of many states (two-sided EWMA, one-sided and two-sided CUSUM), extrapolated.
def ewma_arl(lam, width, shift, m):
    limit = width * math.sqrt(lam / (2 - lam))
    edges = np.linspace(-limit, limit, m + 1)
    mid = (edges[:-1] + edges[1:]) / 2
    z = (edges[None, :] - (1 - lam) * mid[:, None]) / lam - shift
    Q = np.diff(stats.norm.cdf(z), axis=1)
    return np.linalg.solve(np.eye(m) - Q, np.ones(m))[m // 2]


def cusum_arl(k, h, shift, m):
    # States: 0 (an atom) and m cells of equal width.
    w = 2 * h / (2 * m - 1)
    centre = w * np.arange(m)
    Q = np.empty((m, m))
    for i in range(m):
        Q[i, 0] = stats.norm.cdf(w / 2 - centre[i] + k - shift)
        upper = centre[1:] + w / 2 - centre[i] + k - shift
        Q[i, 1:] = stats.norm.cdf(upper) - stats.norm.cdf(upper - w)
    return np.linalg.solve(np.eye(m) - Q, np.ones(m))[0]


def extrapolated(f, m):
    # The chain's error falls with the square of the cell.
    return (4 * f(2 * m) - f(m)) / 3


for lam, width in [(0.5, 3.071), (0.2, 2.962), (0.03, 2.437)]:
    for shift in (0.0, 0.5, 1.0, 3.0):
        a, b = ewma_arl(lam, width, shift, 601), ewma_arl(lam, width, shift, 1201)
        out("ewma-arl", lam, width, shift, b + (b - a) / 3)
for k, h in [(0.5, 4.0), (0.5, 5.0), (0.25, 8.0)]:
    for shift in (-0.5, 0.0, 0.5, 1.0, 2.0):
        out("cusum-arl", k, h, shift, extrapolated(lambda m: cusum_arl(k, h, shift, m), 500))
