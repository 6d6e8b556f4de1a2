"""The variance of the Laplacian by SciPy, for the table in SharpnessTests.cs. Debian: apt-get install python3-scipy."""
import numpy
from scipy.signal import convolve2d

KERNEL = [[0, 1, 0], [1, -4, 1], [0, 1, 0]]
y, x = numpy.mgrid[0:120, 0:160]
PICTURES = {
    "flat": x * 0 + 130,
    "ramp": x + y // 2,
    "lettering": ((x // 5 + y // 7) % 2) * 180 + 30,
    "waves": abs(x % 64 - 32) * 3 + abs(y % 80 - 40) * 2,
    "speckle": (x * 131 + y * 197 + x * y * 7) % 256,
}
for name, picture in PICTURES.items():
    blurred = picture
    for _ in range(3):
        blurred = convolve2d(blurred, numpy.ones((5, 5), dtype=int), mode="same", boundary="symm") // 25
    for label, values in ((name, picture), (name + ", blurred", blurred)):
        print(f'{label}: {convolve2d(values.astype(numpy.int64), KERNEL, mode="valid").var():.9f}')
