"""The characteristic of every cell of the attribute tables, recomputed with SciPy.

Run:   /usr/bin/python3 acceptance_cells.py > acceptance-cells.csv
Needs: Debian 12 package python3-scipy (1.10.1). The output is stored; the tests read it and need no Python.
Each line: inspection, letter, AQL, sample size, greatest count that accepts, probability of acceptance at the AQL, and the share of
failing pieces (above AQL 10 the defects per piece) that is accepted one time in ten, from quantiles rather than by search.
"""
import pathlib
import re
import sys

import scipy
from scipy import stats

text = (pathlib.Path(__file__).parents[3] / "data" / "sampling" / "mil-std-105e.yaml").read_text()
aqls = [float(a) for a in re.search(r"aqlsPercent: \[(.*)\]", text).group(1).split(",")]

print(f"# scipy {scipy.__version__}, python {sys.version.split()[0]}")
print("inspection,letter,aql,n,accept,accepted_at_aql,accepted_one_in_ten")
inspection = ""
for line in text.splitlines():
    if re.fullmatch(r"(normal|tightened|reduced):", line):
        inspection = line[:-1]
    row = re.search(r'letter: (\w), sampleSize: (\d+), cells: "([^"]*)"', line)
    if not row:
        continue
    letter, n = row.group(1), int(row.group(2))
    for aql, cell in zip(aqls, row.group(3).split()):
        if "/" not in cell:
            continue
        accept = int(cell.split("/")[1]) - 1
        share = aql / 100
        if aql > 10:
            accepted = stats.poisson.cdf(accept, n * share)
            limit = stats.chi2.ppf(0.9, 2 * (accept + 1)) / 2 / n
        else:
            accepted = stats.binom.cdf(accept, n, share)
            limit = stats.beta.ppf(0.9, accept + 1, n - accept)
        print(f"{inspection},{letter},{aql!r},{n},{accept},{accepted!r},{limit!r}")
