#!/bin/sh
# Prints the path of a LibreOffice for the tests that read the list's table:
# $OFFICE, or one that is installed, or on Debian as root one that it installs
# now (90 MB to fetch, 280 MB on the disk, about half a minute). Talks on stderr.
for name in "$OFFICE" soffice libreoffice /Applications/LibreOffice.app/Contents/MacOS/soffice; do
  [ -n "$name" ] && command -v "$name" && exit 0
done
if [ "$(id -u)" = 0 ] && [ -e /etc/debian_version ]; then
  { apt-get update && apt-get install -y --no-install-recommends libreoffice-calc-nogui; } >&2 && command -v soffice && exit 0
fi
echo "No LibreOffice was found. Install one, or say where it is: OFFICE=/path/to/soffice make test" >&2
exit 3
