#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measures of bent tubes by scikit-image: writes tubes.csv (outlines) and measures.csv beside itself, or, with --check,
compares what it computes with the stored measures.csv. Run by script/check-deep with Debian's python3-skimage."""
import csv
import math
import os
import sys

import numpy as np
import skimage
from skimage import draw, graph, measure, morphology

HERE = os.path.dirname(os.path.abspath(__file__))
TUBES = [(1, 600, 18, 0.0), (2, 600, 18, 0.9), (3, 700, 12, 2.4), (4, 500, 30, -1.6), (5, 800, 9, 4.0)]


def tube(length, half, turn):
    """Outline of a tube whose spine turns evenly by `turn` radians and whose half-width tapers to a third."""
    steps = 400
    s = np.linspace(0.0, length, steps + 1)
    angle = turn * s / length
    x = np.concatenate([[0], np.cumsum(np.cos(0.5 * (angle[1:] + angle[:-1])) * np.diff(s))])
    y = np.concatenate([[0], np.cumsum(np.sin(0.5 * (angle[1:] + angle[:-1])) * np.diff(s))])
    width = half * (1.0 - 2.0 / 3.0 * s / length)
    left = np.stack([x + width * np.sin(angle), y - width * np.cos(angle)], 1)
    right = np.stack([x - width * np.sin(angle), y + width * np.cos(angle)], 1)
    points = np.concatenate([left, right[::-1]])
    return np.round(points - points.min(0) + 20.0, 3)


def farthest(mask, start):
    cost, _ = graph.MCP_Geometric(np.where(mask, 1.0, -1.0)).find_costs([start])
    cost[~mask] = -1.0
    return np.unravel_index(np.argmax(np.where(np.isfinite(cost), cost, -1.0)), mask.shape)


def measures(points):
    shape = tuple(np.ceil(points.max(0) + 20.0).astype(int)[::-1])
    mask = draw.polygon2mask(shape, points[:, ::-1])
    _, distance = morphology.medial_axis(mask, return_distance=True)
    widest = distance.max()
    first = farthest(mask, np.unravel_index(np.argmax(distance), mask.shape))
    second = farthest(mask, first)
    price = np.where(mask, 1.0 + 3.0 * widest**2 / np.maximum(distance, 0.5) ** 2, -1.0)
    path, _ = graph.route_through_array(price, first, second, fully_connected=True, geometric=True)
    steps = np.diff(np.asarray(path, float), axis=0)
    around = measure.find_contours(mask.astype(float), 0.5)[0]
    smooth = measure.approximate_polygon(around, 0.8)
    return {
        "area_px2": float(mask.sum()),
        "perimeter_px": float(np.hypot(*np.diff(smooth, axis=0).T).sum()),
        "greatest_half_width_px": float(widest),
        "central_path_px": float(np.hypot(*steps.T).sum()),
    }


def main():
    rows = [{"id": i, **{k: "%.3f" % v for k, v in measures(tube(l, h, t)).items()}} for i, l, h, t in TUBES]
    stored = os.path.join(HERE, "measures.csv")
    if "--check" in sys.argv:
        with open(stored, newline="") as file:
            old = list(csv.DictReader(line for line in file if not line.startswith("#")))
        bad = [(a, b) for a, b in zip(old, rows) for k in b if not math.isclose(float(a[k]), float(b[k]), rel_tol=1e-3)]
        print("scikit-image %s: %s" % (skimage.__version__, "differs: %s" % bad if bad else "as stored"))
        return 1 if bad else 0
    with open(os.path.join(HERE, "tubes.csv"), "w") as file:
        file.write("id,x,y\n")
        for i, l, h, t in TUBES:
            file.writelines("%d,%.3f,%.3f\n" % (i, x, y) for x, y in tube(l, h, t))
    with open(stored, "w") as file:
        file.write("# scikit-image %s (Debian 12 python3-skimage), /usr/bin/python3 measures.py\n" % skimage.__version__)
        writer = csv.DictWriter(file, rows[0].keys(), lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)
    return 0


if __name__ == "__main__":
    sys.exit(main())
