#!/bin/bash
# Makes target/release/emberwell-VERSION.tar.gz and its SHA256SUMS. The same commit gives the same bytes, but for
# quarkus-app/quarkus/generated-bytecode.jar: Quarkus 3.33 draws names inside it by chance (later lines do not).
# The version is the tag's (v1.2.3), or what git describe says behind it; "--pack" packs what Maven built last.
set -euo pipefail
cd "$(dirname "$0")/.."

version=$(git describe --tags --match 'v[0-9]*' --dirty 2>/dev/null ||
  git describe --always --dirty --exclude '*' 2>/dev/null | sed 's/^/v0-g/' || true)
version=${version#v}
version=${version:-0-unreleased}
time=$(TZ=UTC git log -1 --format=%cd --date=format-local:%Y-%m-%dT%H:%M:%SZ 2>/dev/null || echo 2026-11-25T00:00:00Z)

if [ "${1:-}" != --pack ]; then
  mvn -B -q -DskipTests "-Drevision=$version" "-Drelease.time=$time" \
    clean package org.cyclonedx:cyclonedx-maven-plugin:makeBom
fi

name=emberwell-$version
out=target/release
rm -rf "$out"
mkdir -p "$out/$name/completion"
cp -r target/quarkus-app LICENSE "$out/$name"
[ -f target/emberwell.cdx.json ] && cp target/emberwell.cdx.json "$out/$name"
cp deploy/{NOTICE,THIRD-PARTY.txt,CHANGELOG.md,UPGRADING.md,README.md,TROUBLES.md,SECURITY.md,ASVS.md,ASVS.csv,emberwell,emberwell.env,emberwell.service} "$out/$name"
"$out/$name/emberwell" man >"$out/$name/emberwell.1"
"$out/$name/emberwell" completion >"$out/$name/completion/emberwell"

export LC_ALL=C
tar --create --directory "$out" --format=gnu --sort=name --mtime="$time" --owner=0 --group=0 --numeric-owner \
  --mode=u+rwX,go+rX,go-w "$name" | gzip -n >"$out/$name.tar.gz"
rm -r "${out:?}/$name"
(cd "$out" && sha256sum "$name.tar.gz" >SHA256SUMS && cat SHA256SUMS)
