"""Writes library-values.json: lattice likelihoods summed term by term, their expected evidence by quadrature (numpy, scipy)."""
import json, math, pathlib
import numpy as np
import scipy
from scipy import integrate, stats

def b(d, e, u, zero=True):
    n = np.arange(-3000, 3001)
    if not zero:
        n = n[n != 0]
    return float(e * np.sum(stats.norm.pdf(d, n * e, u)))

rows = [{"shift": d, "spacing": e, "u": u, "value": b(d, e, u), "withoutZero": b(d, e, u, False)}
        for e in (0.32, 0.8, 2.0) for u in (0.02, 0.05, 0.2, 0.6) for d in (-1.58, 0.0, 0.4, 0.83, 4.0)]
expected = []
for r in (0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5):
    value = integrate.quad(lambda z: stats.norm.pdf(z) * math.log10(b(z * r, 1, r)), -9, 9, limit=400)[0]
    expected.append({"ratio": r, "value": value})
pathlib.Path(__file__).with_name("library-values.json").write_text(json.dumps({"made": "scipy " + scipy.__version__, "likelihood": rows, "expected": expected}, indent=1) + "\n")
