#!/bin/bash
# Installs what the tests need (Debian's Chromium, fonts and Node.js, the rules for the API's document, R and pandas
# which open the data, PostgreSQL, nginx and Caddy as operators have them), then runs every test and check.
set -euo pipefail
cd "$(dirname "$0")/.."

as_root() { if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi; }

missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v Rscript >/dev/null || missing+=(r-base-core)
/usr/bin/python3 -c 'import pandas' 2>/dev/null || missing+=(python3-pandas)
[ -n "$(fc-list 2>/dev/null | head -1)" ] || missing+=(fontconfig fonts-dejavu-core)
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
[ -x /usr/lib/postgresql/15/bin/initdb ] || missing+=(postgresql-15)
command -v nginx >/dev/null || missing+=(nginx-light)
command -v caddy >/dev/null || missing+=(caddy)
command -v openssl >/dev/null || missing+=(openssl)
if [ ${#missing[@]} -gt 0 ]; then
  # the tests start their own PostgreSQL; Debian's would start one for itself
  if [ ! -e /etc/postgresql-common/createcluster.conf ]; then
    as_root mkdir -p /etc/postgresql-common
    echo 'create_main_cluster = false' | as_root tee /etc/postgresql-common/createcluster.conf >/dev/null
  fi
  as_root apt-get -q update
  # runlevel 1: no service is started
  as_root env RUNLEVEL=1 DEBIAN_FRONTEND=noninteractive apt-get -q -o Dpkg::Options::=--force-confold install -y --no-install-recommends "${missing[@]}"
fi

npm --prefix .config/openapi-lint ci --ignore-scripts --no-audit --no-fund --no-update-notifier

export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1
log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
mvn -B verify 2>&1 | tee "$log" || status=$?

# Maven tests twice (the classes, then the packaged program): the sum of its two closing lines
sed 's/\x1b\[[0-9;]*m//g' "$log" | awk -F'[:,]' '
  /^\[[A-Z]+\] *Tests run: [0-9]+, Failures: [0-9]+, Errors: [0-9]+, Skipped: [0-9]+$/ {
    run += $2; failures += $4; errors += $6; skipped += $8
  }
  END {
    printf "Tests run: %d, Failures: %d, Errors: %d, Skipped: %d\n", run, failures, errors, skipped
  }'
if [ "$status" = 0 ]; then echo "All tests and checks passed."; else echo "Failed: see above."; fi
exit "$status"
