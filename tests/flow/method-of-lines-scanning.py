"""Random containers of media that drain and wet on different curves, by a solver of its own: cells of equal height, water contents as unknowns,
flows by centred differences, BDF of scipy step by step. Each cell knows its last turn in closed form: from it a drying curve scaled to pass
through it leads down, a wetting curve scaled to pass through it leads up (Scott, Farquhar and Kouwen 1983, as Kool and Parker 1987 take it up).
Nothing is shared with the simulation in TypeScript. Writes method-of-lines-scanning.json beside it: python3 method-of-lines-scanning.py"""
import json, pathlib, random
import numpy as np
from scipy.integrate import BDF
from scipy.sparse import diags

CELLS = 120
TURN = 1e-6
PATTERN = diags([1.0, 1.0, 1.0], [-1, 0, 1], shape=(CELLS + 1, CELLS + 1)).tocsc()

def run(case):
    n, alpha, ratio, ks = case['n'], case['alpha'], case['ratio'], case['ks'] / 3600
    tr, ts, height = case['residual'], case['saturated'], case['height']
    m, dz = 1 - 1 / n, height / CELLS
    curve = lambda s, a: (1 + (a * np.maximum(s, 0)) ** n) ** -m
    inverse = lambda se, a: (np.clip(se, 1e-12, 1 - 1e-13) ** (-1 / m) - 1) ** (1 / n) / a

    z = (np.arange(CELLS) + 0.5) * dz
    wets = np.zeros(CELLS, bool)
    at = case['start'] + z
    down = np.ones(CELLS)                       # share of the drying curve below the turn
    se0 = curve(at, alpha)                      # effective saturation of the turn
    up = (1 - se0) / (1 - curve(at, ratio * alpha))   # share of the wetting curve above it

    def suction(se):
        dry = inverse(se / down, alpha)
        wet = inverse(1 - (1 - se) / up, ratio * alpha)
        return np.where(se <= se0, dry, wet)

    def rhs(t, y, rain, demand):
        se = np.clip((y[1:] - tr) / (ts - tr), 1e-12, 1 - 1e-13)
        s = suction(se)
        k = ks * np.sqrt(se) * (1 - (1 - se ** (1 / m)) ** m) ** 2
        flow = (k[1:] + k[:-1]) / 2 * ((s[1:] - s[:-1]) / dz - 1)
        out = max(0.0, (ks + k[0]) / 2 * (1 - s[0] / (dz / 2)))
        net = -demand / height * np.clip(s, 0, 1) * dz
        net[:-1] -= flow
        net[1:] += flow
        net[0] -= out
        net[-1] += rain
        return np.concatenate([[out], net / dz])

    def remember(y):
        nonlocal se0, down, up, wets
        se = np.clip((y[1:] - tr) / (ts - tr), 1e-12, 1 - 1e-13)
        s = suction(se)
        on = np.where(wets, se >= se0, se <= se0)
        back = ~on & (np.abs(se - se0) > TURN)
        wets = np.where(back, ~wets, wets)
        move = on | back
        with np.errstate(divide='ignore', invalid='ignore'):
            full = curve(s, ratio * alpha) > 1 - 1e-10
            to_up = np.where(full, 1.0, np.minimum((1 - se) / (1 - curve(s, ratio * alpha)), 1))
            to_down = np.minimum(se / curve(s, alpha), 1)
        down = np.where(move & wets, to_down, down)
        up = np.where(move & ~wets, to_up, up)
        se0 = np.where(move, se, se0)

    y = np.concatenate([[0.0], tr + (ts - tr) * se0])
    rows = []
    for duration, depth, use in case['steps']:
        y[0] = 0
        rain, demand = depth / duration, use / 86400
        solver = BDF(lambda t, y: rhs(t, y, rain, demand), 0, y, duration, rtol=1e-6, atol=1e-8,
                     max_step=duration / 100, jac_sparsity=PATTERN, first_step=1e-6)
        while solver.status == 'running':
            solver.step()
            assert solver.status != 'failed'
            remember(solver.y)
        y = solver.y.copy()
        rows.append({'drained': float(y[0]), 'waterContent': float(y[1:].mean())})
    return rows

rng = random.Random(1987)
cases = []
while len(cases) < 8:
    height, ks = rng.uniform(6, 16), 10 ** rng.uniform(1.5, 2.6)
    case = {
        'n': rng.uniform(1.4, 2.6), 'alpha': 10 ** rng.uniform(-1.5, -0.8), 'ratio': rng.uniform(1.4, 2.5), 'ks': ks,
        'residual': rng.uniform(0, 0.15), 'saturated': rng.uniform(0.6, 0.95), 'height': height, 'start': rng.uniform(2, 15),
    }
    shot = rng.uniform(0.03, 0.06) * height
    duration = max(120.0, shot / (0.3 * ks / 3600))
    case['steps'] = [s for _ in range(4) for s in ([duration, shot, 0.5], [3600.0, 0.0, 0.5], [7200.0, 0.0, 2.0])]
    case['rows'] = run(case)
    cases.append(case)
    print(len(cases), flush=True)
out = pathlib.Path(__file__).with_suffix('.json')
out.write_text(json.dumps({'note': 'heights and depths in cm, alpha in 1/cm, ks in cm/h, times in s, use in cm/d', 'cases': cases}, indent=1) + '\n')
