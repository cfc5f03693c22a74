#!/bin/sh
# How the pictures here were made: Debian 12, webp 1.2.4 (cwebp, img2webp) and exiftool 12.57.
# Run in this folder. Quarters of one colour each: red, green / blue, grey; in the ones with alpha
# the right half is fully transparent (black underneath). shades: red = 2x, green = 3y, blue = x + y.
set -e
work=$(mktemp -d)
quarters() { # width height alpha file
  python3 - "$@" <<'PY'
import sys
w, h, alpha, name = int(sys.argv[1]), int(sys.argv[2]), sys.argv[3] == 'alpha', sys.argv[4]
rows = bytearray()
for y in range(h):
    for x in range(w):
        left, top = x < w // 2, y < h // 2
        rgb = (210, 40, 40) if left and top else (40, 160, 60) if top else (40, 70, 200) if left else (128, 128, 128)
        # a weave, so that there is something to compress
        rgb = tuple(v + (4 if (x // 3 + y // 5) % 2 else -4) for v in rgb)
        if alpha:
            rows += bytes(rgb) + b'\xff' if left else b'\0\0\0\0'
        else:
            rows += bytes(rgb)
head = f'P7\nWIDTH {w}\nHEIGHT {h}\nDEPTH {4 if alpha else 3}\nMAXVAL 255\nTUPLTYPE {"RGB_ALPHA" if alpha else "RGB"}\nENDHDR\n'
open(name, 'wb').write(head.encode() + rows)
PY
}
python3 - "$work/g.ppm" <<'PY'
import sys
pixels = bytes(v for y in range(80) for x in range(120) for v in (2 * x, 3 * y, x + y))
open(sys.argv[1], 'wb').write(b'P6\n120 80\n255\n' + pixels)
PY
quarters 480 320 plain "$work/q.pam"
quarters 240 160 plain "$work/s.pam"
quarters 240 160 alpha "$work/a.pam"
quarters 3300 1200 plain "$work/l.pam"
cwebp -quiet -q 70 "$work/q.pam" -o lossy.webp
cwebp -quiet -lossless "$work/s.pam" -o lossless.webp
cwebp -quiet -lossless "$work/g.ppm" -o shades.webp
cwebp -quiet -q 70 "$work/a.pam" -o alpha-lossy.webp
cwebp -quiet -lossless "$work/a.pam" -o alpha-lossless.webp
cwebp -quiet -q 30 "$work/l.pam" -o large.webp
cp lossy.webp metadata.webp
exiftool -q -overwrite_original -n -Orientation=6 -GPSLatitude=48.5 -GPSLatitudeRef=N \
  -GPSLongitude=9.25 -GPSLongitudeRef=E -Artist="behind the mill" -XMP:Creator="behind the mill" \
  metadata.webp
img2webp -loop 0 -lossy -d 100 lossless.webp alpha-lossless.webp -o animated.webp
rm -r "$work"
