"""A wood's permeability after depths and uptakes, by integration over a grid, with SciPy.

Run:   /usr/bin/python3 permeability.py > permeability.csv   (some minutes)
Needs: Debian 12, python3-scipy 1.10.1. The output is stored; the tests read it and need no Python.
The program draws charges, pieces, places and variances in turn (Gibbs). Here charges, pieces and the median are integrated out in closed
form (all of them are normal, given the variances), and the three variances are summed over a grid of their logarithms. One depth that
filled its way enters as the probability of a normal tail, given the others.
The tank's readings over time and the assays of zones are no straight lines: there the charges are summed over a grid of their own, given median, variance, factor and
walls, which are summed over grids as well. The readings are those of a full normal distribution, its covariance written out.
A measured section is a field whose correlation falls off with distance: here the exact normal distribution of all its places, correlation and all; the program counts
those that lie apart. The field is made here and printed, so that both have the same.
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


# The tank's readings and the zones of two charges, without depths.
MINUTES = np.array([5.0, 15, 40, 90, 180])
TANK = {"a": [110.0, 142, 196, 250, 288], "b": [30.0, 84, 170, 249, 310]}  # L/m3 gone since some moment
U_TANK, AT_ONE_MOMENT = 3.0, 0.05
BANDS = [(0.0, 4.0), (4.0, 10.0), (10.0, 20.0)]
ASSAYS = {"a": [9.1, 4.3, 1.2], "b": [10.6, 7.0, 3.4]}  # kg/m3
FULL_KG, OF_ONE_ZONE, AT_LEAST, OF_CHARGE, U_LABORATORY = 12.0, 0.15, 0.02, 0.07, 0.2
WALLS = np.array([0.0, 0.25, 1.0, 4.0])


def tank_expected(ln_k):
    """By ln k (a vector): readings expected, L/m3."""
    return 600 * np.tanh(np.sqrt(np.exp(ln_k)[:, None] * MINUTES / 5e-16))


def zones_expected(ln_k, walls):
    reach = 40 * np.sqrt(np.exp(ln_k) / 1e-17) / (1 + walls)
    within = lambda mm: reach * (1 - np.exp(-mm / reach))
    return np.stack([FULL_KG * (1 + walls) * (within(to) - within(at)) / (to - at) for at, to in BANDS], axis=1)


def ln_normals(rest, covariance):
    """Logarithms of normal densities, one for each row."""
    chol = np.linalg.cholesky(covariance)
    z = np.linalg.solve(chol, rest[..., None])[..., 0]
    return -0.5 * (z * z).sum(-1) - np.log(np.diagonal(chol, axis1=-2, axis2=-1)).sum(-1)


def ln_tank(charge, ln_k, factor):
    expected = tank_expected(ln_k) * factor
    eye = np.eye(len(MINUTES))
    covariance = eye * (U_TANK**2 + (AT_ONE_MOMENT * expected) ** 2)[:, None, :]
    covariance = covariance + ONE_CHARGE**2 * expected[:, :, None] * expected[:, None, :] + 1e6  # any zero
    return ln_normals(np.array(TANK[charge]) - expected, covariance)


def ln_zones(charge, ln_k, factor, walls):
    expected = zones_expected(ln_k, walls) * factor
    eye = np.eye(len(BANDS))
    own = (OF_ONE_ZONE * expected) ** 2 + (AT_LEAST * FULL_KG) ** 2 + U_LABORATORY**2
    covariance = eye * own[:, None, :] + OF_CHARGE**2 * expected[:, :, None] * expected[:, None, :]
    return ln_normals(np.array(ASSAYS[charge]) - expected, covariance)


def whole_charges(name, has_tank, has_zones):
    ln_k = PRIOR_MEDIAN + np.linspace(-6, 8, 421)
    medians = PRIOR_MEDIAN + np.linspace(-4, 5, 91)
    variances = np.exp(np.linspace(np.log(2e-3), np.log(12), 40))
    factors = np.linspace(-0.5, 0.5, 41)
    walls = range(len(WALLS)) if has_zones else [0]
    believed = (1 - NOT_KNOWN) * BATCH**2
    prior = (
        -WEIGHT / 2 * np.log(variances)[None, :]
        - WEIGHT * believed / (2 * variances)[None, :]
        - ((medians - PRIOR_MEDIAN) ** 2 / (2 * NOT_KNOWN * BATCH**2))[:, None]
    )
    # Weights of the charge's grid, by median and variance.
    inner = np.exp(-((ln_k[None, None, :] - medians[:, None, None]) ** 2) / (2 * variances[None, :, None]))
    inner /= inner.sum(-1, keepdims=True)
    logs = np.empty((len(walls), len(factors), len(medians), len(variances)))
    for w, law in enumerate(walls):
        for f, ln_factor in enumerate(factors):
            total = prior - ln_factor**2 / (2 * ASSUMED**2)
            for charge in "ab":
                ln = np.zeros(len(ln_k))
                if has_tank:
                    ln = ln + ln_tank(charge, ln_k, np.exp(ln_factor))
                if has_zones:
                    ln = ln + ln_zones(charge, ln_k, np.exp(ln_factor), WALLS[law])
                top = ln.max()
                total = total + top + np.log(np.maximum(inner @ np.exp(ln - top), 1e-300))
            logs[w, f] = total
    weights = np.exp(logs - logs.max())
    weights /= weights.sum()
    by_median, by_factor = weights.sum((0, 1, 3)), weights.sum((0, 2, 3))
    rel = medians - PRIOR_MEDIAN
    m, charge = by_median @ rel, weights.sum((0, 1, 2)) @ np.sqrt(variances)
    f = by_factor @ factors
    values = [m, np.sqrt(by_median @ rel**2 - m * m), charge, f, np.sqrt(by_factor @ factors**2 - f * f)]
    print(",".join([name] + [repr(float(x)) for x in values + list(weights.sum((1, 2, 3)))]))


whole_charges("tank", True, False)
whole_charges("zones", False, True)
whole_charges("tank and zones", True, True)


# Two measured sections of one charge: four faces of 100 mm, a place each millimetre; the correlation falls off within 8 mm.
LENGTH, FACES, ALONG = 8.0, 4, 100


def section(name, offsets, seed):
    rng = np.random.default_rng(seed)
    at = np.arange(ALONG)
    correlation = np.exp(-np.abs(at[:, None] - at) / LENGTH)
    chol = np.linalg.cholesky(correlation)
    fields = [[offset + 0.3 * chol @ rng.standard_normal(ALONG) for _ in range(FACES)] for offset in offsets]
    for number, field in enumerate(fields):
        print(",".join([f"{name} {number + 1}"] + [repr(round(float(x), 6)) for x in np.concatenate(field)]))
    fields = [[np.round(face, 6) for face in field] for field in fields]
    inverse = np.linalg.inv(correlation)
    # Given its mean, a piece's places are known by their number, their best mean and the squares about it.
    one = FACES * inverse.sum()
    means = [sum(inverse.sum(0) @ face for face in field) / one for field in fields]
    squares = [sum((face - m) @ inverse @ (face - m) for face in field) for field, m in zip(fields, means)]
    places = FACES * ALONG
    believed = np.array([WITHIN**2, PIECE**2, (1 - NOT_KNOWN) * BATCH**2])
    grid = np.linspace(np.log(1e-3), np.log(12), 60)
    logs, rest = [], []
    for point in itertools.product(grid, repeat=3):
        v = np.exp(point)
        prior = np.sum(-WEIGHT / 2 * np.log(v) - WEIGHT * believed / (2 * v))
        ln = prior - sum(squares) / (2 * v[0]) - (places - 1) * len(fields) / 2 * np.log(v[0])
        cov = NOT_KNOWN * BATCH**2 + v[2] + np.eye(len(fields)) * (v[1] + v[0] / one)
        to_median = np.full(len(fields), NOT_KNOWN * BATCH**2)
        logs.append(ln + ln_density(np.array(means), 0, cov))
        weights = to_median @ np.linalg.inv(cov)
        m, mv = weights @ np.array(means), NOT_KNOWN * BATCH**2 - weights @ to_median
        rest.append((m, mv + m * m, *np.sqrt(v)))
    weights = np.exp(np.array(logs) - max(logs))
    weights /= weights.sum()
    m, m2, within, piece, charge = weights @ np.array(rest)
    print(",".join([name] + [repr(float(x)) for x in (m, np.sqrt(m2 - m * m), within, piece, charge)]))


section("section", [0.9, 0.4, 1.5], 20)
