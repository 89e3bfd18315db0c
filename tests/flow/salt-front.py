"""The closed forms of Ogata and Banks (1961) and van Genuchten and Alves (1982) by the special functions of scipy: shares of the new water
at depths in cm and times in s, behind water of 7.2 cm/h at a content of 0.4 that disperses by 1.5 cm. Writes salt-front.json beside it, to be put into form by npm run lint:
python3 salt-front.py"""
import json, pathlib
from math import exp, log, pi, sqrt
from scipy.special import erfc, log_ndtr

v = 7.2 / 3600 / 0.4
D = 1.5 * v
rows = []
for x in (1, 10, 30, 60):
    for part in (0.2, 0.8, 1, 1.5, 4):
        t = part * x / v
        a = (x - v * t) / (2 * sqrt(D * t))
        b = (x + v * t) / (2 * sqrt(D * t))
        # exp(v x / D) erfc(b), of which either factor may overflow.
        m = exp(v * x / D + log(2) + log_ndtr(-b * sqrt(2)))
        resident = erfc(a) / 2 + sqrt(v * v * t / (pi * D)) * exp(-a * a) - (1 + v * x / D + v * v * t / D) * m / 2
        rows.append({'depth': x, 'time': t, 'ogataBanks': (erfc(a) + m) / 2, 'vanGenuchtenAlves': resident})
pathlib.Path(__file__).with_suffix('.json').write_text('[\n' + ',\n'.join('  { ' + json.dumps(row)[1:-1] + ' }' for row in rows) + '\n]\n')
