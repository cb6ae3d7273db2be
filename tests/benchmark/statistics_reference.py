"""The work of statistics_speed in NumPy: as a careful person would write it, whole classes at a time.
Prints "fit CPU_S WALL_S", "kappa CPU_S VALUE", "bootstrap CPU_S LOW HIGH" and writes the lines to lines.f64."""
import os
import sys
import time

import numpy as np
from scipy.special import ndtr

REFERENCE = np.array([0.5, 1.5, 2.5, 3.5, 4.5])
CENTRE = np.array([0, 0, 0, 0, 0, np.log(0.5)])  # middle line, four log gaps, log spread
PRECISION = np.array([0.6, 0.35, 0.35, 0.35, 0.35, 0.4]) ** -2.0


def lines_of(p):
    gap = np.exp(p[:, 1:5])
    middle = REFERENCE[2] + p[:, 0]
    return gap, np.stack([middle - gap[:, 1] - gap[:, 0], middle - gap[:, 1], middle,
                          middle + gap[:, 2], middle + gap[:, 2] + gap[:, 3]], axis=1)


def looks(p, x):
    """Distances in spreads, densities there, chances of the six grades."""
    gap, line = lines_of(p)
    spread = np.exp(p[:, 5])
    z = (line[:, None, :] - x[:, :, None]) / spread[:, None, None]
    density = np.exp(-0.5 * z * z) * (1 / np.sqrt(2 * np.pi))
    tail = ndtr(-np.abs(z))
    up = z > 0
    chance = np.empty(z.shape[:2] + (6,))
    chance[:, :, 0] = np.where(up[:, :, 0], 1 - tail[:, :, 0], tail[:, :, 0])
    chance[:, :, 5] = np.where(up[:, :, 4], tail[:, :, 4], 1 - tail[:, :, 4])
    lo, hi = tail[:, :, :-1], tail[:, :, 1:]
    chance[:, :, 1:5] = np.where(up[:, :, :-1], lo - hi, np.where(up[:, :, 1:], 1 - lo - hi, hi - lo))
    np.maximum(chance, 1e-300, out=chance)
    return gap, spread, z, density, chance


def value(p, chance, y):
    picked = np.take_along_axis(chance, y[:, :, None], 2)[:, :, 0]
    return np.log(picked).sum(1) - 0.5 * ((p - CENTRE) ** 2 @ PRECISION)


def step(p, seen, y):
    gap, spread, z, density, chance = seen
    n = len(p)
    inverse = 1 / np.maximum(chance, 1e-14)
    edge = np.zeros(z.shape[:2] + (7,))
    edge[:, :, 1:6] = z * density
    by_spread = edge[:, :, :-1] - edge[:, :, 1:]
    relative = by_spread * inverse
    f = density / spread[:, None, None]
    info = np.zeros((n, 6, 6))
    own = (f * f * (inverse[:, :, :-1] + inverse[:, :, 1:])).sum(1)
    pair = -(f[:, :, :-1] * f[:, :, 1:] * inverse[:, :, 1:5]).sum(1)
    cross = (f * (relative[:, :, :-1] - relative[:, :, 1:])).sum(1)
    k = np.arange(5)
    info[:, k, k] = own
    info[:, k[:-1], k[1:]] = info[:, k[1:], k[:-1]] = pair
    info[:, :5, 5] = info[:, 5, :5] = cross
    info[:, 5, 5] = (by_spread * relative).sum((1, 2))
    hit = np.zeros_like(chance)
    np.put_along_axis(hit, y[:, :, None], 1, 2)
    hit /= chance
    slope = np.empty((n, 6))
    slope[:, :5] = (f * (hit[:, :, :-1] - hit[:, :, 1:])).sum(1)
    slope[:, 5] = (by_spread * hit).sum((1, 2))
    turn = np.zeros((n, 6, 6))
    turn[:, :5, 0] = 1
    turn[:, 0, 1] = -gap[:, 0]
    turn[:, 0, 2] = turn[:, 1, 2] = -gap[:, 1]
    turn[:, 3, 3] = turn[:, 4, 3] = gap[:, 2]
    turn[:, 4, 4] = gap[:, 3]
    turn[:, 5, 5] = 1
    back = turn.transpose(0, 2, 1)
    slope = (back @ slope[:, :, None])[:, :, 0] - (p - CENTRE) * PRECISION
    curve = back @ info @ turn + np.diag(PRECISION)
    move = np.linalg.solve(curve, slope[:, :, None])[:, :, 0]
    return move, (slope * move).sum(1)


def fit(x, y, settled=1e-13):
    p = np.tile(CENTRE, (len(x), 1))
    going = np.arange(len(x))
    here = None
    for _ in range(100):
        seen = looks(p[going], x[going])
        here = value(p[going], seen[4], y[going])
        move, gain = step(p[going], seen, y[going])
        open_ = gain >= settled
        going, move, here = going[open_], move[open_], here[open_]
        if len(going) == 0:
            break
        there = p[going] + move
        for _ in range(20):
            worse = ~(value(there, looks(there, x[going])[4], y[going]) >= here - 1e-12)
            if not worse.any():
                break
            move[worse] /= 2
            there[worse] = p[going][worse] + move[worse]
        p[going] = np.where(worse[:, None], p[going], there)
        going = going[~worse]
        if len(going) == 0:
            break
    return lines_of(p)[1]


def timed(work):
    took = []
    for _ in range(3):
        wall, cpu = time.perf_counter(), time.process_time()
        found = work()
        took.append((time.process_time() - cpu, time.perf_counter() - wall))
    took.sort()
    return found, took[1]


def kappa(tables):
    """Quadratic, of tables along the first axis."""
    off = np.subtract.outer(np.arange(6), np.arange(6)) ** 2.0
    seen = (tables * off).sum((1, 2))
    chance = np.einsum("bi,ij,bj->b", tables.sum(2), off, tables.sum(1)) / tables.sum((1, 2))
    return 1 - seen / chance


def main(folder):
    readings, attempts, draws, _ = (int(w) for w in open(os.path.join(folder, "sizes.txt")).read().split())
    load = lambda name, kind: np.fromfile(os.path.join(folder, name), kind)
    x = load("intensity.f64", np.float64).reshape(-1, readings)
    y = load("grade.u8", np.uint8).reshape(-1, readings).astype(np.intp)
    batch = 1000
    lines, (cpu, wall) = timed(
        lambda: np.concatenate([fit(x[i:i + batch], y[i:i + batch]) for i in range(0, len(x), batch)]))
    lines.tofile(os.path.join(folder, "lines.f64"))
    print("fit", cpu, wall)
    truth, read = load("truth.u8", np.uint8), load("read.u8", np.uint8)
    found, (cpu, _) = timed(
        lambda: kappa(np.bincount(truth.astype(np.intp) * 6 + read, minlength=36).reshape(1, 6, 6).astype(float)))
    print("kappa", cpu, found[0])
    students = len(truth) // attempts
    code = np.repeat(np.arange(students), attempts) * 36 + truth.astype(np.intp) * 6 + read
    tables = np.bincount(code, minlength=students * 36).reshape(students, 36).astype(float)
    rng = np.random.default_rng(11)

    def bootstrap():
        times = rng.multinomial(students, np.full(students, 1 / students), size=draws).astype(float)
        return np.quantile(kappa((times @ tables).reshape(draws, 6, 6)), [0.025, 0.975])

    found, (cpu, _) = timed(bootstrap)
    print("bootstrap", cpu, *found)


main(sys.argv[1])
