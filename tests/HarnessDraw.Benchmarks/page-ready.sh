#!/usr/bin/env bash
# Prints how soon the saloon's page can be used in this machine's Chromium, as the page's own test tells it (to reach: 1000 ms).
#   page-ready.sh [TIMES]
# Needs: chromium; the tests built in Release.
set -euo pipefail
cd "$(dirname "$0")/../.."
for _ in $(seq "${1:-5}"); do
  dotnet test tests/HarnessDraw.Tests -c Release --no-build --filter FullyQualifiedName~The_page_gets_ready --logger 'console;verbosity=detailed' | grep -oE 'ready after [0-9]+ ms.*'
done | sort -t' ' -k3n
