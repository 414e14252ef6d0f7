"""Means of a few assays, and laboratories held against each other, with SciPy.

Run:   /usr/bin/python3 assays.py > assays.csv
Needs: Debian 12 package python3-scipy (1.10.1). The output is stored; the tests read it and need no Python.
Each line: what, then numbers as said beside each.
"""
import itertools
import sys

import numpy as np
import scipy
from scipy import stats

print(f"# scipy {scipy.__version__}, python {sys.version.split()[0]}")


def line(what, *numbers):
    print(",".join([what] + [repr(float(number)) for number in numbers]))


# required, stated standard uncertainty common to all, assays ..., effective degrees of freedom, probability that the mean meets it.
for required, common, values in [
    (12, 0.4, [13.0, 15.0]), (12, 0.4, [13.0, 13.4]), (12, 0.1, [11.2, 13.9, 14.6]), (4, 0.2, [3.9, 4.4, 4.9]), (8, 1.0, [8.2, 9.4, 7.9, 10.1, 9.0]),
    (12, 0.05, [11.0, 12.5]), (1.2, 0.02, [1.31, 1.44, 1.25, 1.5]), (20, 2.0, [17.0, 19.0]),
]:
    scatter = stats.sem(values)
    freedom = (common**2 + scatter**2) ** 2 / (scatter**4 / (len(values) - 1))
    line("mean", required, common, *values, freedom, stats.t.cdf((np.mean(values) - required) / np.hypot(common, scatter), freedom))

# assays of two laboratories, three each, that state next to no uncertainty; statistic and two-sided chance of Welch's test.
rng = np.random.default_rng(7)
for shift in (0.0, 0.5, 1.0, 2.0, 4.0):
    a, b = rng.normal(10, 0.8, 3), rng.normal(10 + shift, 0.3, 3)
    test = stats.ttest_ind(a, b, equal_var=False)
    line("two-laboratories", *a, *b, abs(test.statistic), test.pvalue)

# assays of three laboratories, three each, likewise; Birge ratio and what Welch's test of several means lets it stay below
# in 95 of 100 cases (formula remembered, distribution SciPy's).
for apart, spread in ((0, (0.5, 0.5, 0.5)), (0, (0.2, 0.6, 0.9)), (3, (0.3, 0.5, 0.4)), (2, (0.1, 0.4, 0.8))):
    samples = [rng.normal(10 + apart * i, s, 3) for i, s in enumerate(spread)]
    weight = np.array([1 / stats.sem(sample) ** 2 for sample in samples])
    mean = np.array([sample.mean() for sample in samples])
    found = (weight * (mean - (weight * mean).sum() / weight.sum()) ** 2).sum() / 2
    unsure = ((1 - weight / weight.sum()) ** 2 / 2).sum()
    most = stats.f.ppf(0.95, 2, 8 / (3 * unsure)) * (1 + 2 * unsure / 8)
    line("three-laboratories", *itertools.chain(*samples), np.sqrt(found), np.sqrt(most))

# Two laboratories with samples of their own, some of one analysed by both. Required; per sample: content and standard uncertainty at A, the same at B,
# nan where it was not analysed there; effective degrees of freedom; probability that the mean of the samples meets it. Weights over one sample by least squares
# (inverse variance), samples alike; the uncertainty of each laboratory common to all that it analysed, propagated with a covariance matrix.
gone = float("nan")
for required, rows in [
    (8, [(5.9, 0.16, gone, gone), (0.5, 0.03, gone, gone), (gone, gone, 8.9, 0.16)]),
    (8, [(10.0, 0.3, 10.4, 0.3), (13.2, 0.3, gone, gone)]),
    (8, [(9.1, 0.2, 9.4, 0.4), (8.7, 0.2, 8.9, 0.5), (gone, gone, 10.6, 0.4), (9.9, 0.3, gone, gone)]),
    (12, [(13.0, 0.4, gone, gone), (gone, gone, 13.4, 0.8)]),
]:
    table = np.array(rows, dtype=float).reshape(-1, 2, 2)
    known = ~np.isnan(table[:, :, 0])
    weight = np.where(known, 1 / np.nan_to_num(table[:, :, 1], nan=1) ** 2, 0)
    weight /= weight.sum(axis=1, keepdims=True)
    contents = (weight * np.nan_to_num(table[:, :, 0])).sum(axis=1)
    gradient = weight / len(rows)
    stated = 0.0
    for laboratory in range(2):
        u = np.nan_to_num(table[:, laboratory, 1])
        stated += gradient[:, laboratory] @ np.outer(u, u) @ gradient[:, laboratory]
    scatter = stats.sem(contents)
    freedom = (stated + scatter**2) ** 2 / (scatter**4 / (len(rows) - 1))
    line("samples", required, *itertools.chain(*rows), freedom, stats.t.cdf((contents.mean() - required) / np.sqrt(stated + scatter**2), freedom))
