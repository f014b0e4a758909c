"""Writes library-values.json: drying of a round thread by the Bessel series (scipy)."""
import json, pathlib
import numpy as np
import scipy
from scipy.optimize import brentq
from scipy.special import jn_zeros

zeros = jn_zeros(0, 2000)
share = lambda t: float(1 - np.sum(4 / zeros**2 * np.exp(-(zeros**2) * t)))
out = {
    "made": "scipy " + scipy.__version__,
    "times": [{"share": p, "time": brentq(lambda t: share(t) - p, 1e-6, 9)} for p in (0.05, 0.5, 0.9, 0.95, 0.999)],
    "shares": [{"time": t, "share": share(t)} for t in (2e-5, 9e-5, 2e-4, 1e-3, 0.02, 0.2, 1.0)],
}
pathlib.Path(__file__).with_name("library-values.json").write_text(json.dumps(out, indent=1) + "\n")
