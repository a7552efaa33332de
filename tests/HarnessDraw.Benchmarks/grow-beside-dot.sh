#!/usr/bin/env bash
# Times the published executable beside Graphviz on generated harnesses of growing size, whole processes, and prints a table in Markdown.
#   grow-beside-dot.sh EXECUTABLE [PAIRS] [CIRCUITS ...]
# Needs: dot (Debian package graphviz). Least of PAIRS runs each, up to 300 s a run; the chart may be refused or cut into several, its time counts all the same.
set -euo pipefail
program=$(realpath "$1")
pairs=${2:-3}
sizes=("${@:3}")
[ ${#sizes[@]} -gt 0 ] || sizes=(12 30 60 150 500 2000)
here=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet build -c Release -v q "$here/tests/HarnessDraw.Benchmarks" > "$work/build" || { cat "$work/build" >&2; exit 1; }
tool=$(find "$here/tests/HarnessDraw.Benchmarks/bin/Release" -name HarnessDraw.Benchmarks.dll | head -n 1)

milliseconds() { # command... -> wall time in ms; exit 1 is a result (findings), anything above is a failure
  local begin end code=0
  begin=$(date +%s%N)
  timeout 300 "$@" > /dev/null 2> "$work/messages" || code=$?
  end=$(date +%s%N)
  [ $code -ne 124 ] || { echo 300000; return; }
  [ $code -le 1 ] || { cat "$work/messages" >&2; exit 1; }
  echo $(((end - begin) / 1000000))
}

printf '| circuits | wires | wall chart, ms | dot -Tsvg, ms | ratio |\n|--:|--:|--:|--:|--:|\n'
for n in "${sizes[@]}"; do
  mkdir -p "$work/$n"
  dotnet "$tool" generate "$n" "$work/$n"
  dotnet "$tool" graph "$work/$n/growth.yaml" > "$work/$n/wires.dot"
  ours=() theirs=()
  for _ in $(seq "$pairs"); do
    ours+=("$(milliseconds "$program" draw "$work/$n/growth.yaml" --sheets wall-chart --format svg --out "$work/$n/chart")")
    theirs+=("$(milliseconds dot -Tsvg "$work/$n/wires.dot" -o "$work/$n/wires.svg")")
  done
  least() { printf '%s\n' "$@" | sort -n | head -n 1; }
  awk -v n="$n" -v wires="$(grep -c -- ' -- ' "$work/$n/wires.dot")" -v a="$(least "${ours[@]}")" -v b="$(least "${theirs[@]}")" 'BEGIN { printf "| %s | %s | %s | %s | %.2f |\n", n, wires, a, b, a / (b > 0 ? b : 1) }'
done
