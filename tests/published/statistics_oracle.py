"""The random cases of statistics_cases by scikit-learn, statsmodels and SciPy. Exit 77: one of them is missing."""
import subprocess
import sys
import warnings

try:
    import numpy as np
    from scipy.integrate import quad
    from scipy.optimize import minimize
    from scipy.stats import norm
    from sklearn.metrics import cohen_kappa_score
    from statsmodels.stats.inter_rater import cohens_kappa, fleiss_kappa
except ImportError as missing:
    print("skipped:", missing)
    sys.exit(77)

warnings.simplefilter("ignore")
worst = {}


def close(what, ours, theirs, within):
    off = float(np.max(np.abs(np.asarray(ours) - np.asarray(theirs))))
    worst[what] = max(worst.get(what, 0), off)
    if not off <= within:
        print(f"{what}: ours {ours}, theirs {theirs}")
        close.failed = True


close.failed = False


def kappa(head, data, ours):
    q = int(head)
    table = np.array(data).reshape(q, q)
    truth, read = np.nonzero(np.ones((q, q)))
    times = table.astype(int).ravel()
    truth, read = np.repeat(truth, times), np.repeat(read, times)
    for i, (ours_name, scikit) in enumerate([(None, None), ("linear", "linear"), ("quadratic", "quadratic")]):
        close("kappa, scikit-learn", ours[2 * i],
              cohen_kappa_score(truth, read, weights=scikit, labels=list(range(q))), 1e-10)
        far = np.abs(np.subtract.outer(np.arange(q), np.arange(q))) ** i if i else None
        found = cohens_kappa(table, weights=far)
        close("kappa, statsmodels", ours[2 * i], found.kappa, 1e-10)
        close("error of kappa, statsmodels", ours[2 * i + 1], found.std_kappa, 1e-10)


def items(persons, k, data, ours):
    x = np.array(data).reshape(persons, k)
    total = x.sum(1)
    close("alpha, NumPy", ours[0], k / (k - 1) * (1 - x.var(0, ddof=1).sum() / total.var(ddof=1)), 1e-10)
    for i in range(k):
        if x[:, i].std() > 0:
            close("item with rest, NumPy", ours[1 + i], np.corrcoef(x[:, i], total - x[:, i])[0, 1], 1e-10)


def minus_log(p, x, y, prior):
    gap = np.exp(p[1:5])
    middle = 2.5 + p[0]
    edge = np.array([-np.inf, middle - gap[1] - gap[0], middle - gap[1], middle, middle + gap[2],
                     middle + gap[2] + gap[3], np.inf])
    a, b = (edge[y] - x) / np.exp(p[5]), (edge[y + 1] - x) / np.exp(p[5])
    turned = a > 0
    a, b = np.where(turned, -b, a), np.where(turned, -a, b)
    upper, lower = norm.logcdf(b), norm.logcdf(a)
    sum_ = np.sum(upper + np.log1p(-np.exp(np.minimum(lower - upper, -1e-300))))
    off = (p - np.array([0, 0, 0, 0, 0, np.log(0.5)])) / np.array([0.6, 0.35, 0.35, 0.35, 0.35, 0.4])
    return -sum_ + (0.5 * off @ off if prior else 0)


def lines(data, ours, prior):
    x, y = np.array(data[0::2]), np.array(data[1::2]).astype(int)
    start = np.array([0, 0, 0, 0, 0, np.log(0.5)])
    p = minimize(minus_log, start, args=(x, y, prior), method="BFGS", options={"gtol": 1e-7}).x
    best = minimize(minus_log, p, args=(x, y, prior), method="Nelder-Mead",
                    options={"maxiter": 20000, "maxfev": 20000, "xatol": 1e-9, "fatol": 1e-12})
    gap = np.exp(best.x[1:5])
    middle = 2.5 + best.x[0]
    theirs = [middle - gap[1] - gap[0], middle - gap[1], middle, middle + gap[2], middle + gap[2] + gap[3],
              np.exp(best.x[5])]
    close("lines, SciPy", ours[:6], theirs, 2e-5)
    close("log posterior, SciPy", ours[6], -best.fun, 1e-7)


def ability(data, ours):
    def posterior(x):
        value = np.exp(-0.5 * x * x)
        for difficulty, right in zip(data[0::2], data[1::2]):
            value /= 1 + np.exp(-(x - difficulty) if right else x - difficulty)
        return value
    every = quad(posterior, -4, 4)[0]
    mean = quad(lambda x: x * posterior(x), -4, 4)[0] / every
    close("ability, SciPy", ours[0], mean, 1e-3)
    close("its error, SciPy", ours[1],
          np.sqrt(quad(lambda x: (x - mean) ** 2 * posterior(x), -4, 4)[0] / every), 1e-3)


for row in subprocess.run([sys.argv[1]], capture_output=True, text=True, check=True).stdout.splitlines():
    given, found = row.split(" =")
    words = given.split()
    ours = [float(w) for w in found.split()]
    if words[0] == "kappa":
        kappa(words[1], [float(w) for w in words[2:]], ours)
    elif words[0] == "fleiss":
        close("Fleiss' kappa, statsmodels", ours[0],
              fleiss_kappa(np.array(words[3:], float).reshape(int(words[1]), int(words[2]))), 1e-10)
    elif words[0] == "items":
        items(int(words[1]), int(words[2]), [float(w) for w in words[3:]], ours)
    elif words[0] == "ability":
        ability([float(w) for w in words[2:]], ours)
    else:
        lines([float(w) for w in words[2:]], ours, words[0] == "probable")
for what, off in worst.items():
    print(f"{what}: largest difference {off:.1e}")
sys.exit(1 if close.failed or len(worst) < 9 else 0)
