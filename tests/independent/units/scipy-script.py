"""Writes library-values.json: size of each unit in SI from scipy.constants (CODATA 2022 and exact definitions)."""
import json, pathlib
import scipy
from scipy import constants as c

sizes = {
    "mm": c.milli, "µm": c.micro, "in": c.inch, "ft": c.foot, "in²": c.inch**2, "L": c.liter, "ft³": c.foot**3, "gal": c.gallon,
    "min": c.minute, "h": c.hour, "km/h": c.kmh, "ft/min": c.foot / c.minute, "in/s": c.inch,
    "CFM": c.foot**3 / c.minute, "L/min": c.liter / c.minute, "m³/h": 1 / c.hour,
    "bar": c.bar, "hPa": 100, "psi": c.psi, "mmH2O": 1000 * c.g * c.milli, "inH2O": 1000 * c.g * c.inch,
    "°F": c.degree_Fahrenheit, "F°": c.degree_Fahrenheit, "oz": c.oz, "lb": c.lb, "gf": c.gram * c.g, "kgf": c.kgf, "lbf": c.lbf,
    "rpm": 1 / c.minute, "°": c.degree,
}
points = [{"unit": u, "value": v, "si": float(c.convert_temperature(v, s, "Kelvin"))} for u, s in (("°C", "Celsius"), ("°F", "Fahrenheit")) for v in (-40, 0, 25, 212, 480)]
pathlib.Path(__file__).with_name("library-values.json").write_text(json.dumps({"made": "scipy " + scipy.__version__, "sizes": sizes, "points": points}, indent=1, ensure_ascii=False) + "\n")
