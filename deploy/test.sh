#!/bin/bash
# Installs what the tests need (Debian's Chromium and fonts), then runs every test and check.
set -euo pipefail
cd "$(dirname "$0")/.."

as_root() { if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi; }

missing=()
command -v chromium >/dev/null || missing+=(chromium)
[ -n "$(fc-list 2>/dev/null | head -1)" ] || missing+=(fontconfig fonts-dejavu-core)
if [ ${#missing[@]} -gt 0 ]; then
  as_root apt-get -q update
  as_root env DEBIAN_FRONTEND=noninteractive apt-get -q install -y --no-install-recommends "${missing[@]}"
fi

export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1
log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
mvn -B verify 2>&1 | tee "$log" || status=$?

# the closing lines once more, so that they stand at the end: all classes, then the packaged program
echo
grep -E '^\[(INFO|WARNING|ERROR)\] *(.\[[0-9;]*m)*Tests run: .*[0-9]$' "$log" | sed 's/\x1b\[[0-9;]*m//g' || true
[ "$status" = 0 ] && echo "All tests and checks passed." || echo "Failed: see above."
exit "$status"
