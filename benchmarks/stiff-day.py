"""The benchmark's day by a general stiff solver: BDF of scipy with a sparse Jacobian over cells of equal height. Prints CPU in ms and the drain of
each shot in L."""
import json, sys, time
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

cells, rtol = int(sys.argv[1]), float(sys.argv[2])
n, alpha, ks, tr, ts, height, area = 1.7, 0.15, 180 / 3600, 0.18, 0.92, 15.0, 2000.0
m, dz = 1 - 1 / n, height / cells
start = float(sys.argv[3])

def values(theta):
    se = np.clip((theta - tr) / (ts - tr), 1e-12, 1 - 1e-13)
    return (se ** (-1 / m) - 1) ** (1 / n) / alpha, ks * np.sqrt(se) * (1 - (1 - se ** (1 / m)) ** m) ** 2

def rhs(t, y, rain, demand):
    s, k = values(y[1:])
    up = (k[1:] + k[:-1]) / 2 * ((s[1:] - s[:-1]) / dz - 1)
    out = max(0.0, (ks + k[0]) / 2 * (1 - s[0] / (dz / 2)))
    net = -demand / height * np.clip(s, 0, 1) * dz
    net[:-1] -= up
    net[1:] += up
    net[0] -= out
    net[-1] += rain
    return np.concatenate([[out], net / dz])

pattern = diags([1.0, 1.0, 1.0], [-1, 0, 1], shape=(cells + 1, cells + 1))
z = (np.arange(cells) + 0.5) * dz
y = np.concatenate([[0.0], tr + (ts - tr) * (1 + (alpha * (z + start)) ** n) ** -m])
begun = time.process_time()
shots = []
for _ in range(20):
    before = y[0]
    for duration, litres in ((180.0, 0.7), (4140.0, 0.0)):
        args = (litres * 1000 / area / duration, 10000 / area / 86400)
        y = solve_ivp(rhs, (0, duration), y, method='BDF', rtol=rtol, atol=rtol * 0.01, jac_sparsity=pattern, args=args,
                      t_eval=[duration]).y[:, -1]
    shots.append(float(y[0] - before) * area / 1000)
print(json.dumps({'ms': 1000 * (time.process_time() - begun), 'shots': shots}))
