"""Twenty random containers by a solver of its own: cells of equal height, water contents as unknowns, flows by centred differences, time by
BDF of scipy. Nothing is shared with the simulation in TypeScript. Writes method-of-lines.json beside it: python3 method-of-lines.py"""
import json, pathlib, random
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

CELLS = 150
H1, H2 = 0.0, 1.0
PATTERN = diags([1.0, 1.0, 1.0], [-1, 0, 1], shape=(CELLS + 1, CELLS + 1))

def run(case):
    n, alpha, ks = case['n'], case['alpha'], case['ks'] / 3600
    tr, ts, height = case['residual'], case['saturated'], case['height']
    m = 1 - 1 / n
    dz = height / CELLS

    def suction(theta):
        se = np.clip((theta - tr) / (ts - tr), 1e-12, 1 - 1e-13)
        return (se ** (-1 / m) - 1) ** (1 / n) / alpha, se

    def conductivity(se):
        return ks * np.sqrt(se) * (1 - (1 - se ** (1 / m)) ** m) ** 2

    def rhs(t, y, rain, demand):
        s, se = suction(y[1:])
        k = conductivity(se)
        # Up is positive: from where suction is small to where it is large, less what sinks.
        up = (k[1:] + k[:-1]) / 2 * ((s[1:] - s[:-1]) / dz - 1)
        out = max(0.0, (ks + k[0]) / 2 * (1 - s[0] / (dz / 2)))
        share = np.clip((s - H1) / (H2 - H1), 0, 1)
        net = -demand / height * share * dz
        net[:-1] -= up
        net[1:] += up
        net[0] -= out
        net[-1] += rain
        return np.concatenate([[out], net / dz])

    z = (np.arange(CELLS) + 0.5) * dz
    s0 = case['start'] + z
    y = np.concatenate([[0.0], tr + (ts - tr) * (1 + (alpha * s0) ** n) ** -m])
    rows = []
    for duration, depth in case['steps']:
        y[0] = 0
        demand = case['use'] / 86400
        got = solve_ivp(rhs, (0, duration), y, method='BDF', rtol=1e-6, atol=1e-8, jac_sparsity=PATTERN,
                        args=(depth / duration, demand), first_step=1e-6, t_eval=[duration])
        assert got.success
        y = got.y[:, -1].copy()
        rows.append({'drained': float(y[0]), 'waterContent': float(y[1:].mean())})
    return rows

rng = random.Random(14)
cases = []
while len(cases) < 20:
    height, ks = rng.uniform(6, 20), 10 ** rng.uniform(1.3, 2.8)
    shot = rng.uniform(0.02, 0.06) * height
    case = {
        'n': rng.uniform(1.35, 3), 'alpha': 10 ** rng.uniform(-1.6, -0.7), 'ks': ks,
        'residual': rng.uniform(0, 0.15), 'saturated': rng.uniform(0.6, 0.95), 'height': height,
        'start': rng.uniform(0, 6), 'use': rng.uniform(0.2, 1.0),
    }
    duration = max(120.0, shot / (0.3 * ks / 3600))
    case['steps'] = [s for _ in range(4) for s in ([duration, shot], [1800.0, 0.0])]
    case['rows'] = run(case)
    cases.append(case)
    print(len(cases), flush=True)
out = pathlib.Path(__file__).with_suffix('.json')
out.write_text(json.dumps({'note': 'heights and depths in cm, alpha in 1/cm, ks in cm/h, times in s, use in cm/d', 'cases': cases}, indent=1) + '\n')
