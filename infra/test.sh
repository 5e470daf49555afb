#!/usr/bin/env bash
# Sets up what the tests need, builds with warnings as errors, runs every test.
# Usage: bash infra/test.sh            everything
#        bash infra/test.sh Engine     only tests/Engine.Tests
# Last line: "N passed, N failed" (", N skipped" when some were).
set -euo pipefail
cd "$(dirname "$0")/.."
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 MSBUILDDISABLENODEREUSE=1

# --- what the tests need -----------------------------------------------------------------------
# Debian or Ubuntu as root: install what is missing. Elsewhere: say what is missing; the tests that
# need it then skip and say so.
missing=()
command -v rabbitmq-server >/dev/null 2>&1 || [ -x /usr/sbin/rabbitmq-server ] \
  || missing+=(rabbitmq-server)
command -v chromium >/dev/null 2>&1 || missing+=(chromium)
command -v pdftoppm >/dev/null 2>&1 || missing+=(poppler-utils)
if [ ${#missing[@]} -gt 0 ]; then
  if command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ]; then
    echo "Installing: ${missing[*]}"
    # The tests start brokers of their own; the distribution's must not start one beside them.
    policy=/usr/sbin/policy-rc.d
    ours=no
    if [ ! -e "$policy" ]; then
      printf '#!/bin/sh\nexit 101\n' > "$policy"
      chmod +x "$policy"
      ours=yes
    fi
    apt-get update -qq >/dev/null
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
      "${missing[@]}" >/dev/null
    if [ "$ours" = yes ]; then rm -f "$policy"; fi
  else
    echo "Not installed, so the tests that need them will skip: ${missing[*]}"
  fi
fi

# Reference data that may not be shipped lies beside the project where it is allowed to be at all.
if [ -z "${REFERENCE_DATA:-}" ] && [ -d ../shared/data ]; then
  REFERENCE_DATA="$(cd ../shared/data && pwd)"
  export REFERENCE_DATA
fi
echo "Reference data: ${REFERENCE_DATA:-absent, the tests that need it will skip}"

# --- build -------------------------------------------------------------------------------------
dotnet restore --locked-mode -v quiet
dotnet format whitespace PostFrameServices.sln --no-restore --verify-no-changes -v quiet
dotnet build -c Release --no-restore -v quiet

# --- test --------------------------------------------------------------------------------------
passed=0 failed=0 skipped=0 broken=()
logs=artifacts/tests
mkdir -p "$logs"
for project in tests/*.Tests; do
  name=$(basename "$project")
  [ -z "${1:-}" ] || [ "$name" = "$1.Tests" ] || continue
  log="$logs/$name.log"
  status=0
  dotnet test --project "$project" -c Release --no-build --no-restore >"$log" 2>&1 || status=$?
  count() { sed -nE "s/^ *$1: *([0-9]+).*/\1/p" "$log" | tail -n 1; }
  good=$(count succeeded) bad=$(count failed) skip=$(count skipped)
  if [ -z "$good" ]; then good=0; bad=1; broken+=("$name: no result"); fi
  # A run that ends badly although no test failed (a crash, a time-out) is a failure too.
  if [ "$status" -ne 0 ] && [ "${bad:-0}" -eq 0 ]; then bad=1; broken+=("$name: exit $status"); fi
  passed=$((passed + good)) failed=$((failed + ${bad:-0})) skipped=$((skipped + ${skip:-0}))
  echo "$name: $good passed, ${bad:-0} failed, ${skip:-0} skipped"
  if [ "${bad:-0}" -ne 0 ]; then cat "$log"; fi
  grep -E '^ *skipped ' "$log" || true
done
for line in ${broken[@]+"${broken[@]}"}; do echo "BROKEN $line"; done
if [ "$skipped" -gt 0 ]; then
  echo "$passed passed, $failed failed, $skipped skipped"
else
  echo "$passed passed, $failed failed"
fi
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
