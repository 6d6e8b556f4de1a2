"""Makes the picture files of these tests with tools that are not ours: Pillow writes the pictures, ExifTool what a phone adds to them.
Debian: apt-get install python3-pil libimage-exiftool-perl. Run in this folder."""
import subprocess
from PIL import Image

SIZE = (48, 32)
picture = Image.new("RGB", SIZE)
picture.putdata([((x * 5) % 256, (y * 7) % 256, (x * y) % 256) for y in range(SIZE[1]) for x in range(SIZE[0])])
# The place is a point in the middle of an ocean.
PHONE = ["-GPSLatitude=12.5", "-GPSLatitudeRef=N", "-GPSLongitude=45.25", "-GPSLongitudeRef=W", "-GPSAltitude=3", "-Make=Phone", "-Model=One",
         "-SerialNumber=123", "-Artist=Somebody", "-DateTimeOriginal=2026:11:25 18:40:02", "-XMP:City=Somewhere", "-XMP:GPSLatitude=12.5"]


def tag(name, *more):
    subprocess.run(["exiftool", "-q", "-overwrite_original", *PHONE, *more, name], check=True)


picture.save("Files/phone.jpg", quality=85, comment=b"home")
tag("Files/phone.jpg", "-Orientation#=6", "-IPTC:City=Somewhere", "-ThumbnailImage<=Files/phone.jpg")
picture.save("Files/progressive.jpg", quality=85, progressive=True)
tag("Files/progressive.jpg", "-ExifByteOrder=II")
with open("Files/progressive.jpg", "ab") as file:
    file.write(b"a film with its place behind the picture's end")
picture.save("Files/plain.jpg", quality=85)
picture.save("Files/phone.png")
tag("Files/phone.png")
picture.save("Files/phone.webp", lossless=True)
tag("Files/phone.webp")
