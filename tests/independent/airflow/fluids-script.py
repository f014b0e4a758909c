"""Values from general-purpose libraries for tests/lib/airflow. Run with Debian's python3:
     apt-get install -y --no-install-recommends python3-fluids python3-scipy
     /usr/bin/python3 fluids-script.py > library-values.json
"""
import json
from math import pi, radians

import fluids
import numpy
import scipy
from fluids import atmosphere, fittings, friction
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq
from scipy.stats import f as f_distribution, t as t_distribution

CFM = 0.3048**3 / 60


def pchip(x, y, at):
    p = PchipInterpolator(x, y)
    return {"x": x, "y": y, "at": at, "values": [float(p(v)) for v in at], "slopes": [float(p.derivative()(v)) for v in x]}


def bend_mitre(degrees):
    return fittings.bend_miter(angle=degrees, method="Rennels")


def layer_history(h, layer_time, layers=40, cells=16):
    """Top layer before the next one: method of lines with an implicit stiff solver, 16 cells per layer, degrees C."""
    k, rho, cp, d, hot, air = 0.13, 1240.0, 1800.0, 0.2e-3, 210.0, 25.0
    dx = d / cells
    alpha = k / (rho * cp)
    top = 1 / (1 / h + dx / (2 * k))
    T = numpy.empty(0)
    for layer in range(layers):
        T = numpy.concatenate([T, numpy.full(cells, hot)])
        n = len(T)

        def rate(_, T):
            flow = numpy.zeros(n + 1)
            flow[1:n] = -k * (T[1:] - T[:-1]) / dx
            flow[n] = top * (T[-1] - air)
            return -(flow[1:] - flow[:-1]) / (dx * rho * cp)

        solved = solve_ivp(rate, (0, layer_time), T, method="LSODA", rtol=1e-7, atol=1e-6, lband=1, uband=1)
        T = solved.y[:, -1]
    return float(T[-cells:].mean())


values = {
    "made_with": {"fluids": fluids.__version__, "scipy": scipy.__version__, "numpy": numpy.__version__},
    "standard_atmosphere": {
        "altitude_pressure": [[z, atmosphere.ATMOSPHERE_1976(z).P] for z in (0, 500, 1500, 3000)],
        "viscosity_288_15": atmosphere.ATMOSPHERE_1976(0).mu,
        "conductivity_288_15": atmosphere.ATMOSPHERE_1976(0).k,
    },
    "friction": {
        "laminar_round": [[re, friction.friction_laminar(re)] for re in (500, 1500, 2000)],
        "colebrook": [[re, ed, friction.Colebrook(re, ed)] for re, ed in ((4000, 0), (5000, 1e-3), (1e4, 0), (1e5, 1e-4), (2e4, 5e-3))],
        "haaland": [[re, ed, friction.Haaland(re, ed)] for re, ed in ((4000, 0), (5000, 1e-3), (1e4, 0), (1e5, 1e-4), (2e4, 5e-3))],
    },
    "fittings": {
        "mitre": [[a, bend_mitre(a)] for a in (30, 45, 60, 90)],
        "mitre_90_other_correlations": [fittings.bend_miter(angle=90, Di=0.0171, Re=5000.0, roughness=0.0, L_unimpeded=0.4, method=m) for m in ("Miller", "Crane", "Blevins")],
        "rounded_90": [[r, fittings.bend_rounded(Di=1, angle=90, fd=0.03, bend_diameters=r, method="Rennels")] for r in (1, 1.5, 2)],
        "contraction_sharp": [[s, fittings.contraction_sharp(Di1=1, Di2=s**0.5, method="Rennels")] for s in (0.1, 0.25, 0.5, 0.8)],
        "contraction_cone": [[s, a, fittings.contraction_conical(Di1=1, Di2=s**0.5, angle=a, method="Rennels", fd=0.03)] for s in (0.25, 0.5) for a in (20, 30, 40, 60, 90, 120, 150)],
        "diffuser": [[r, a, fittings.diffuser_conical(Di1=1, Di2=r**0.5, angle=a, fd=0.03, method="Rennels")] for r in (2, 4) for a in (8, 14, 20, 30, 45, 60, 90)],
        "contraction_cone_60": fittings.contraction_conical(Di1=1, Di2=0.5, angle=60, method="Rennels", fd=0.03),
        "expansion_sharp": [[s, fittings.diffuser_sharp(Di1=s**0.5, Di2=1)] for s in (0.1, 0.25, 0.5, 0.8)],
        "diffuser_area_ratio_2": [[a, fittings.diffuser_conical(Di1=1, Di2=2**0.5, angle=a, fd=0.03, method="Rennels")] for a in (8, 20, 60)],
    },
    "orifice_coefficient": fluids.flow_meter.C_Reader_Harris_Gallagher(D=0.1, Do=0.05, rho=1.2, mu=1.81e-5, m=1e5 * pi * 0.1 * 1.81e-5 / 4, taps="corner"),
    "pchip": [
        pchip([0, 1, 2, 3, 4], [150, 135, 105, 60, 0], [0.5, 1.5, 2.5, 3.5, 3.9]),
        pchip([0, 0.5, 1.5, 2, 3.8], [89.2, 88, 70, 66, 0], [0.25, 1.0, 1.75, 2.5, 3.5]),
        pchip([0, 1, 2, 3], [60, 45, 48, 0], [0.5, 1.2, 1.9, 2.4]),
    ],
    "layer_history_pla": [[h, t, layer_history(h, t)] for h, t in ((75, 5), (75, 10), (75, 20), (25, 10), (150, 10))],
    "layer_time_to_60": [[h, brentq(lambda t: layer_history(h, t, cells=6) - 60, 2, 60, xtol=0.01)] for h in (50, 75, 100, 150)],
    "f_chance": [[x, a, b, float(f_distribution.sf(x, a, b))] for x, a, b in ((279.614, 2, 5), (241.174, 2, 21), (1.12712, 5, 16), (0.5, 2, 9), (3.2, 1, 4))],
    "t_95": [[n, float(t_distribution.ppf(0.975, n))] for n in (1, 2, 5, 19, 100)],
}
print(json.dumps(values, indent=1))
