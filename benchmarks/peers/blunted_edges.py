"""The peer of cutting edges in the apex simulator: the same model in NumPy, all runs side by side.

blunted_edges.py RUNS CUTS SEGMENTS HITS_PER_MM_CUT GROWTH_UM2 FLOW_STRESS_MPA TRANSITION_UM prints, one
"name number" a line: the processor seconds of the simulation, the mean push reading over its start,
hits and chips per run. The edge is brought up to date every 20 cuts and where it is hit, as ours is.
What it does less: benchmarks/README.md.
"""

import sys
import time

import numpy as np

TANGENT = np.tan(np.radians(15))
DENT_RATIO = 1.155 * (1 + np.radians(15))
SEGMENT_UM, LAND_UM, COMPLIANCE_UM, PUSH_REACH_UM = 4.0, 0.5, 15.0, 30.0
SHARING_CUTS, FOLD_LIFE_CUTS, FOLD_SHARE, CHIP_ASPECT = 20, 40, 0.5, 4.0


def newton(y, level_and_slope, steps=12):
    """The largest root of each, from above; 0 where there is none."""
    stands = np.zeros(y.shape, bool)
    for _ in range(steps):
        level, slope = level_and_slope(y)
        stands |= slope <= 0
        y = np.where(stands, 0.0, np.maximum(y - level / np.where(stands, 1.0, slope), 0.0))
    level, slope = level_and_slope(y)
    return np.where(stands | (np.abs(level) > 1e-6 * (np.abs(slope) * y + 1e-30)), 0.0, y)


def damage(rng, land, stress, transition):
    """Depth and half length of dents, folds and chips of hits on these lands."""
    n = land.size
    diameter = 60 * np.exp(np.log(1.8) * rng.standard_normal(n))
    force = np.pi / 4 * (diameter * 1e-3) ** 2 * 20 * rng.exponential(size=n)
    angle = np.abs(rng.standard_normal(n)) * np.radians(25)
    along = force * np.abs(np.cos(angle)) / stress * 1e6
    side = force * np.abs(np.sin(angle)) / stress * 1e6
    held = along / DENT_RATIO / (2 * np.sqrt(diameter))
    c = 4 * TANGENT / 3
    root = newton(np.cbrt(held / c), lambda v: (v * (c * v * v + land) - held, 3 * c * v * v + land))
    dent = root**2
    contact = 2 * np.sqrt(diameter * dent)

    def hinge(y):
        length, section = contact + 2 * y, land + 2 * TANGENT * y
        return length * section**2 / 4 - side * y, section * (section / 2 + length * TANGENT) - side

    pull = 4 * side / np.sqrt(transition)

    def crack(y):
        length, section = contact + 2 * y, land + 2 * TANGENT * y
        root_of = np.sqrt(section)
        return length * section * root_of - pull * y, root_of * (2 * section + 3 * TANGENT * length) - pull

    chip = newton(np.cbrt(pull / 2) ** 2 / (2 * TANGENT), crack)
    breaks = (chip > 0) & (land + 2 * TANGENT * chip > transition)
    fold = np.where(breaks, 0, newton(np.sqrt(side / 2) / TANGENT, hinge))
    chip, dent = np.where(breaks, chip, 0), np.where(breaks, 0, dent)
    return (dent, contact / 2), (fold, contact / 2 + fold), (chip, (CHIP_ASPECT * chip + contact) / 2)


def covered(position, depth, half, segments, run):
    """Flat segment numbers and depths of parabolas around the positions."""
    keep = depth > 0
    position, depth, half, run = position[keep], depth[keep], half[keep], run[keep]
    first = np.clip(np.ceil((position - half) / SEGMENT_UM - 0.5), 0, segments).astype(int)
    past = np.clip(np.floor((position + half) / SEGMENT_UM - 0.5) + 1, 0, segments).astype(int)
    count = np.maximum(past - first, 0)
    start = np.repeat(np.cumsum(count) - count, count)
    hit = np.repeat(np.arange(count.size), count)
    at = first[hit] + np.arange(count.sum()) - start
    u = ((at + 0.5) * SEGMENT_UM - position[hit]) / half[hit]
    return run[hit] * segments + at, depth[hit] * np.maximum(0, 1 - u * u)


def main(runs, cuts, segments, hits_per_mm_cut, growth, stress, transition):
    began = time.process_time()
    rng = np.random.default_rng(1)
    length_um = segments * SEGMENT_UM
    teeth = 0.6 * (0.5 - 2 * np.abs(np.arange(segments) / 2 - np.round(np.arange(segments) / 2)))
    unworn = np.tile(teeth, runs).reshape(runs, segments)
    squared = np.full(runs * segments, LAND_UM**2)
    share = np.zeros(runs * segments)
    fold = np.zeros(runs * segments)
    due = np.zeros(runs * segments, int)
    falls = {}
    hit_count = chip_count = 0

    def height():
        return unworn - (np.sqrt(squared.reshape(runs, segments)) - LAND_UM) / (2 * TANGENT)

    def widen(at, by, dose):
        where, inverse = np.unique(at, return_inverse=True)
        land = np.sqrt(squared[where] + share[where] * dose) + np.bincount(inverse, by)
        squared[where] = land * land - share[where] * dose

    for cut in range(cuts):
        if cut % SHARING_CUTS == 0:
            squared += share * (growth * SHARING_CUTS)
            z = height()
            load = np.exp((z - z.mean(axis=1, keepdims=True)) / COMPLIANCE_UM)
            share = (load / load.mean(axis=1, keepdims=True)).ravel()
        dose = growth * (cut % SHARING_CUTS + 1)
        n = rng.poisson(hits_per_mm_cut * length_um * 1e-3 * runs)
        run, position = rng.integers(0, runs, n), rng.uniform(0, length_um, n)
        middle = run * segments + np.minimum((position / SEGMENT_UM).astype(int), segments - 1)
        dents, folds, chips = damage(rng, np.sqrt(squared[middle] + share[middle] * dose), stress, transition)
        hit_count += n
        chip_count += np.count_nonzero(chips[0])
        for depth, half in (dents, chips):
            at, by = covered(position, depth, half, segments, run)
            widen(at, 2 * TANGENT * by, dose)
            if depth is chips[0]:
                fold_left = fold[at] - by
                fold[at] = np.maximum(0, fold_left)
        at, by = covered(position, *folds, segments, run)
        higher = by > fold[at]
        np.maximum.at(fold, at, by)
        due[at[higher]] = cut + FOLD_LIFE_CUTS
        falls[cut + FOLD_LIFE_CUTS] = at[higher]
        at = np.unique(falls.pop(cut, np.empty(0, int)))
        at = at[(fold[at] > 0) & (due[at] <= cut)]
        widen(at, 2 * TANGENT * fold[at], dose)
        fold[at] = 0
    squared += share * (growth * ((cuts - 1) % SHARING_CUTS + 1))
    z = height()
    weight = np.exp((z - z.mean(axis=1, keepdims=True)) / PUSH_REACH_UM)
    felt = np.sqrt(squared.reshape(runs, segments)) + FOLD_SHARE * fold.reshape(runs, segments)
    push = (weight * felt).sum(axis=1) / weight.sum(axis=1)
    print("simulation_cpu_s", time.process_time() - began)
    print("push_ratio", push.mean() / LAND_UM)
    print("hits", hit_count / runs)
    print("chips", chip_count / runs)


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:4]), *(float(word) for word in sys.argv[4:]))
