"""A wood's permeability after depths and uptakes, by integration over a grid, with SciPy.

Run:   /usr/bin/python3 permeability.py > permeability.csv   (some minutes)
Needs: Debian 12, python3-scipy 1.10.1. The output is stored; the tests read it and need no Python.
The program draws charges, pieces, places and variances in turn (Gibbs). Here charges, pieces and the median are integrated out in closed
form (all of them are normal, given the variances), and the three variances are summed over a grid of their logarithms. One depth that
filled its way enters as the probability of a normal tail, given the others.
Each line: case, then median's logarithm (mean, standard deviation), mean standard deviation within a piece, between pieces, between charges, and the
mean of the logarithm of the factor on uptakes with its standard deviation.
"""
import itertools
import sys

import numpy as np
import scipy
from scipy.stats import norm

PRIOR_MEDIAN, BATCH, PIECE, WITHIN = np.log(1e-18), 0.9, 0.4, 0.3
NOT_KNOWN, WEIGHT = 0.75, 4
ASSUMED = 0.12  # of the factor on uptakes
SLOPE, LEVEL, ONE_CHARGE = 0.5, 26.0, 0.05  # ln uptake = LEVEL + SLOPE ln k

# charge, piece, ln k less the prior median
DEPTHS = [
    ("a", "1", 0.50), ("a", "1", 0.90), ("a", "2", 0.10), ("a", "2", -0.20),
    ("b", "1", 1.40), ("b", "1", 1.10), ("b", "2", 1.90), ("b", "2", 1.55),
    ("c", "1", 0.70), ("c", "1", 0.35), ("c", "2", 0.95), ("c", "2", 1.30),
]
FULL = ("b", "3", 1.60)  # at least this
UPTAKES = [("a", 0.30), ("b", 0.85), ("d", 0.65)]  # ln uptake less that of wood of the prior median


def ln_density(x, mean, covariance):
    chol = np.linalg.cholesky(covariance)
    z = np.linalg.solve(chol, x - mean)
    return -0.5 * z @ z - np.log(np.diag(chol)).sum()


def case(name, depths, uptakes, full=None):
    rows = [("depth", charge, piece, value) for charge, piece, value in depths]
    if full:
        rows.append(("depth", *full))
    rows += [("uptake", charge, "", value) for charge, value in uptakes]
    n = len(rows)
    values = np.array([row[3] for row in rows])
    slope = np.array([1.0 if row[0] == "depth" else SLOPE for row in rows])
    is_depth = np.array([row[0] == "depth" for row in rows])
    same_charge = np.array([[a[1] == b[1] for b in rows] for a in rows]).astype(float)
    same_piece = np.array([[a[0] == b[0] == "depth" and a[1:3] == b[1:3] for b in rows] for a in rows]).astype(float)
    both_uptake = np.outer(~is_depth, ~is_depth).astype(float)
    scale = np.outer(slope, slope)
    median_variance = NOT_KNOWN * BATCH**2
    # Covariance of the data with the median and with the factor, which are wanted.
    to_median = slope * median_variance
    to_factor = (~is_depth) * ASSUMED**2
    believed = np.array([WITHIN**2, PIECE**2, (1 - NOT_KNOWN) * BATCH**2])
    grid = np.linspace(np.log(1e-3), np.log(12), 60)
    logs, rest = [], []
    points = list(itertools.product(grid, repeat=3))
    for point in points:
        v = np.exp(point)
        # Scaled inverse chi-squared, in the logarithm of the variance.
        prior = np.sum(-WEIGHT / 2 * np.log(v) - WEIGHT * believed / (2 * v))
        cov = scale * (median_variance + v[2] * same_charge) + v[1] * same_piece + both_uptake * ASSUMED**2
        cov += np.diag(np.where(is_depth, v[0], ONE_CHARGE**2))
        if not full:
            logs.append(prior + ln_density(values, 0, cov))
            inverse = np.linalg.inv(cov)
            m, f = to_median @ inverse @ values, to_factor @ inverse @ values
            mv = median_variance - to_median @ inverse @ to_median
            fv = ASSUMED**2 - to_factor @ inverse @ to_factor
        else:
            at = len(depths)
            others = [i for i in range(n) if i != at]
            inner = np.linalg.inv(cov[np.ix_(others, others)])
            gain = cov[at, others] @ inner
            mean, spread = gain @ values[others], np.sqrt(cov[at, at] - gain @ cov[others, at])
            z = (full[2] - mean) / spread
            logs.append(prior + ln_density(values[others], 0, cov[np.ix_(others, others)]) + norm.logsf(z))
            # Moments of the hidden value, a normal cut off below.
            hazard = np.exp(norm.logpdf(z) - norm.logsf(z))
            hidden = mean + spread * hazard
            hidden_variance = spread**2 * (1 + z * hazard - hazard**2)
            full_values = values.copy()
            full_values[at] = hidden
            inverse = np.linalg.inv(cov)
            weights = to_median @ inverse
            m, f = weights @ full_values, (to_factor @ inverse) @ full_values
            mv = median_variance - weights @ to_median + weights[at] ** 2 * hidden_variance
            fv = ASSUMED**2 - to_factor @ inverse @ to_factor + (to_factor @ inverse)[at] ** 2 * hidden_variance
        rest.append((m, mv + m * m, *np.sqrt(v), f, fv + f * f))
    weights = np.exp(np.array(logs) - max(logs))
    weights /= weights.sum()
    m, m2, within, piece, charge, f, f2 = weights @ np.array(rest)
    print(",".join([name] + [repr(float(x)) for x in (m, np.sqrt(m2 - m * m), within, piece, charge, f, np.sqrt(f2 - f * f))]))


print(f"# scipy {scipy.__version__}, python {sys.version.split()[0]}")
case("depths", DEPTHS, [])
case("uptakes", [], UPTAKES)
case("both", DEPTHS, UPTAKES)
case("full", DEPTHS, UPTAKES, FULL)
