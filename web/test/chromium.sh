#!/bin/sh
# Prints the path of a Chromium for the browser tests: $CHROME, or one that is
# installed, or on Debian as root one that it installs now. Talks on stderr.
for name in "$CHROME" chromium chromium-browser google-chrome google-chrome-stable \
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome" /Applications/Chromium.app/Contents/MacOS/Chromium; do
  [ -n "$name" ] && command -v "$name" && exit 0
done
if [ "$(id -u)" = 0 ] && [ -e /etc/debian_version ]; then
  # The page ships no fonts; without any, text has no width.
  { apt-get update && apt-get install -y --no-install-recommends chromium fonts-dejavu-core fonts-noto-core; } >&2 && command -v chromium && exit 0
fi
echo "No Chromium was found. Install one, or say where it is: CHROME=/path/to/chrome make test" >&2
exit 3
