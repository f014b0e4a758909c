"""Writes library-values.json from scipy. Run: python3 scipy-script.py (scipy 1.17.1 was used)."""
import json, math, pathlib
import numpy as np
from scipy import integrate, stats

freedoms = [1, 1.5, 2, 3, 4.7, 9, 16.74, 42.46, 120, 1e6]
out = {
    "made": "scipy " + __import__("scipy").__version__,
    "studentQuantile": [{"p": p, "freedom": f, "value": float(stats.t.ppf(p, f))} for f in freedoms for p in (0.6, 0.9, 0.975, 0.995)],
    "studentBelow": [{"t": t, "freedom": f, "value": float(stats.t.cdf(t, f))} for f in (1, 2.5, 10, 200) for t in (-6.0, -1.0, 0.3, 2.5, 12.0)],
    "normalBelow": [{"z": z, "value": float(stats.norm.cdf(z))} for z in (-6, -1.959963984540054, -0.5, 0, 0.1, 1, 3.2)],
    "chiSquareQuantile": [{"p": p, "freedom": f, "value": float(stats.chi2.ppf(p, f))} for f in (1, 2, 5, 7, 40) for p in (0.025, 0.5, 0.975)],
    "betaQuantile": [{"p": p, "a": a, "b": b, "value": float(stats.beta.ppf(p, a, b))} for (a, b) in ((1, 5), (2, 4), (5.5, 0.7), (30, 12)) for p in (0.025, 0.5, 0.975)],
    "logGamma": [{"x": x, "value": math.lgamma(x)} for x in (0.1, 0.5, 1.5, 2, 7, 25.5, 171.2)],
    "rateInterval": [],
    "failureTableP": [],
    "signedRankP": [],
    "signTestP": [],
    "welch": [],
    "power": [],
}
for hits, tries in ((0, 4), (1, 5), (2, 3), (7, 20), (6, 6)):
    ci = stats.binomtest(hits, tries).proportion_ci(0.95, "exact")
    out["rateInterval"].append({"hits": hits, "tries": tries, "low": float(ci.low), "high": float(ci.high)})
for t in ((0, 5, 4, 1), (0, 3, 3, 0), (0, 4, 4, 0), (2, 6, 5, 2), (1, 9, 8, 12)):
    out["failureTableP"].append({"table": t, "value": float(stats.fisher_exact([[t[0], t[1]], [t[2], t[3]]])[1])})
for d in ([.12, .05, .09, .15, .04], [1.5, -0.4, 2.2, 0.9, -0.1, 3.0, 0.7], [-2, -1, 3.5, 4.25, 5.5, -6.75]):
    out["signedRankP"].append({"differences": d, "value": float(stats.wilcoxon(d, method="exact").pvalue)})
    out["signTestP"].append({"differences": d, "value": float(stats.binomtest(sum(x > 0 for x in d), len(d)).pvalue)})
for a, b in (([1.2, 1.4, 1.1, 1.3], [0.9, 1.0, 0.7]), ([5, 9, 7, 12, 4], [5.5, 6.5, 6.1, 6.3])):
    r = stats.ttest_ind(b, a, equal_var=False)
    ci = r.confidence_interval(0.95)
    out["welch"].append({"before": a, "after": b, "p": float(r.pvalue), "freedom": float(r.df), "plusMinus": float((ci.high - ci.low) / 2)})
for freedom, t, delta in ((2, 4.30265273, 5.65), (4, 2.77644511, 3.0), (6, 2.44691185, 0.0), (9, 2.26215716, 4.4)):
    power = float(1 - (stats.nct.cdf(t, freedom, delta) - stats.nct.cdf(-t, freedom, delta)))
    out["power"].append({"t": t, "freedom": freedom, "delta": delta, "value": power})
pathlib.Path(__file__).with_name("library-values.json").write_text(json.dumps(out, indent=1) + "\n")
