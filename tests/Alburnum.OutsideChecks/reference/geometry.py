"""Sections, sawn pieces and photographs' geometry by general-purpose libraries: Shapely and scikit-image.

Run:  /usr/bin/python3 geometry.py > geometry.csv     (Debian 12: python3-shapely 1.8.5, python3-skimage 0.19.3)
Each line: what, arguments, values; the first line names what each column holds.
"""
import math
import sys

import numpy as np
import shapely
import skimage
from shapely.geometry import LineString, Point, Polygon, box
from skimage.measure import CircleModel, EllipseModel
from skimage.transform import ProjectiveTransform

print(f"# shapely {shapely.__version__}, scikit-image {skimage.__version__}, python {sys.version.split()[0]}")
print("# sawn: width, height, x, y of the middle from the pith, heartwood radius, log radius; heartwood share, share on faces 1 to 4")
print("# homography: eight of four corners from, eight to, point; mapped point")
print("# ellipse: sixteen of eight points; centre, longer and shorter half axis")
print("# circle: twelve of six points; centre, radius")


def out(what, *values):
    print(",".join([what] + [repr(float(v)) for v in values]))


def circle(radius):
    return Point(0, 0).buffer(radius, resolution=4096)


for w, h, x, y, heart, log in [
    (100, 100, 0, 0, 40, 80), (100, 100, 0, 0, 60, 80), (75, 75, 10, -5, 45, 90), (75, 75, 37.5, 37.5, 60, 110), (50, 150, 0, 40, 70, 120),
    (150, 50, 0, 60, 70, 120), (22, 95, 60, 0, 65, 100), (38, 87, 20, 30, 55, 90), (47, 200, 0, 0, 90, 130), (47, 200, 70, 20, 90, 140),
    (250, 125, 0, 62.5, 100, 190), (250, 125, 0, 0, 160, 190), (19, 38, 80, 5, 75, 110), (100, 22, 0, -70, 65, 100), (125, 75, -30, 20, 50, 120),
    (90, 90, 45, 0, 0, 110), (90, 90, 45, 0, 200, 220), (63, 63, -31.5, 31.5, 44.6, 95), (32, 175, 0, 10, 30, 140), (200, 200, 5, 5, 120, 150),
]:
    piece, heartwood = box(x - w / 2, y - h / 2, x + w / 2, y + h / 2), circle(heart) if heart else Polygon()
    left, right, low, high = x - w / 2, x + w / 2, y - h / 2, y + h / 2
    faces = [LineString([(left, high), (right, high)]), LineString([(right, low), (right, high)]), LineString([(left, low), (right, low)]), LineString([(left, low), (left, high)])]
    out("sawn", w, h, x, y, heart, log, piece.intersection(heartwood).area / piece.area, *[f.intersection(heartwood).length / f.length for f in faces])

random = np.random.default_rng(20261129)
for _ in range(10):
    a = np.array([[0, 0], [100, 0], [100, 80], [0, 80]], float)
    b = np.array([[310, 220], [1290, 190], [1350, 1010], [270, 1060]]) + random.uniform(-90, 90, (4, 2))
    b = b.round(2)
    model = ProjectiveTransform()
    assert model.estimate(a, b)
    p = random.uniform(5, 75, 2).round(3)
    out("homography", *a.ravel(), *b.ravel(), *p, *model(p)[0])

for _ in range(10):
    cx, cy, major, minor, angle = random.uniform(400, 900), random.uniform(300, 700), random.uniform(250, 380), random.uniform(150, 240), random.uniform(0, math.pi)
    t = np.linspace(0, 2 * math.pi, 9)[:-1] + 0.2
    points = EllipseModel().predict_xy(t, params=(cx, cy, major, minor, angle)).round(6)
    model = EllipseModel()
    assert model.estimate(points)
    x, y, p, q, _ = model.params
    out("ellipse", *points.ravel(), x, y, max(p, q), min(p, q))

for _ in range(10):
    cx, cy, r = random.uniform(-20, 20), random.uniform(-20, 20), random.uniform(15, 70)
    t = random.uniform(0, 2 * math.pi, 6)
    points = np.column_stack([cx + r * np.cos(t), cy + r * np.sin(t)]).round(7)
    model = CircleModel()
    assert model.estimate(points)
    out("circle", *points.ravel(), *model.params)
