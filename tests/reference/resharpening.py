#!/usr/bin/env python3
"""Passes to bring an edge back, worked without Keenfall's code: its formulas written down again and
solved by bisection. Used by src/sharpening/*_test.cpp. Run: python3 tests/reference/resharpening.py

It prints passes for damage 5, 10 and 20 um deep, bevel 15 degrees per side, faces at 1.5 degrees,
0.3 mm behind the edge, 100 mm of edge, 10 N, strokes of 120 mm; never dressed [every 30 passes]:
"""
import math

TAN = lambda deg: math.tan(math.radians(deg))


def f(h):
    return 1.0 if h < 0.8 else 3 / 5.3 * h**-2.5 if h < 1.25 else 3 / 2.43 * h**-6


def resistance(matrix, share, carbide, diameter, grain, groove, cap=12.0):
    r_m = matrix / 700 / f(matrix / grain)
    r_c = carbide / 700 / f(carbide / grain)
    phi = 1 / (1 + (groove / diameter) ** 2)
    return r_m * (1 + share * (min(r_c / r_m, cap) - 1) * phi)


def area(rise):
    a, t = TAN(1.5), TAN(15)
    return 300 * rise + rise**2 * a * t / (t - a)


def passes(steel, stone, rise, every=None):
    return passes_for(steel, stone, area(rise), every)


def passes_for(steel, stone, area_um2, every=None):
    matrix, share, carbide, diameter = steel
    grain, power, keeps = stone
    v = 2e-3 * power / resistance(matrix, share, carbide, diameter, grain, 4) * 10 * 0.12
    n_g = 120 / (1 + 20 * share * max(0, carbide / grain - 0.9))
    since = lambda n: v * (keeps * n + (1 - keeps) * n_g * (1 - math.exp(-n / n_g)))

    def removed(n):
        if every is None:
            return since(n)
        return math.floor(n / every) * since(every) + since(n - every * math.floor(n / every))

    goal, lo, hi = area_um2 * 100 * 1e-6, 0.0, 1e5
    for _ in range(200):
        mid = (lo + hi) / 2
        lo, hi = (mid, hi) if removed(mid) < goal else (lo, mid)
    return lo


STEELS = {"75Ni8": (577, 0.01, 1000, 0.5), "AISI A11": (680, 0.165, 2800, 2)}
STONES = {
    "fused alumina": (2100, 1, 0.2),
    "silicon carbide": (2600, 1.3, 0.8),
    "CBN": (4500, 2, 1),
    "diamond": (8000, 3, 1),
}
if __name__ == "__main__":
    for name, steel in STEELS.items():
        for stone_name, stone in STONES.items():
            for rise in (5, 10, 20):
                never, every = passes(steel, stone, rise), passes(steel, stone, rise, 30)
                print(f"{name:9} {stone_name:16} {rise:3} um {never:10.3f} [{every:.3f}]")
    # The worked number of docs/methods/resharpening.md: 17 degrees, land 3 um, chip 12 um.
    a, t, m = TAN(1.5), TAN(17), TAN(20)
    rise = 3 / (2 * t) + 12
    whole = 300 * rise + rise**2 * a * t / (t - a) - 9 / (4 * t)
    micro = rise**2 * t * m / (m - t) - 9 / (4 * t)
    print(f"rise {rise:.3f} um, bevel {whole:.2f} um2, micro-bevel {micro:.2f} um2")
    for stone_name in ("fused alumina", "diamond"):
        for area_um2 in (whole, micro):
            steel = (660, 0.12, 1600, 8)
            print(f"X153CrMoV12 {stone_name} {passes_for(steel, STONES[stone_name], area_um2):.3f}")
    # A test bevel of 22 degrees on the same bevel, 80 +- 3 um wide after 20 passes on alumina: the
    # steel it took, the k0 that says so, and the passes for the whole bevel.
    g = TAN(22)
    taken = [w**2 * math.sin(math.radians(22)) ** 2 * (g - t) / (g * t) * 1e-4 for w in (77, 80, 83)]
    n_g = 120 / (1 + 20 * 0.12 * max(0, 1600 / 2100 - 0.9))
    since = lambda n: 0.2 * n + 0.8 * n_g * (1 - math.exp(-n / n_g))
    k0 = taken[1] * resistance(660, 0.12, 1600, 8, 2100, 4) / (10 * 0.12 * since(20))
    lo, hi = 0.0, 1e5
    for _ in range(200):
        mid = (lo + hi) / 2
        lo, hi = (mid, hi) if since(mid) < whole * 1e-4 / taken[1] * since(20) else (lo, mid)
    print("counted: took", *(f"{v:.7f}" for v in taken), f"mm3, k0 {k0:.6e}, {lo:.3f} passes")
