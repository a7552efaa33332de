#!/usr/bin/env bash
# Times the published executable against Graphviz on the same circuits, whole processes, pair by pair in one run, and prints a table.
#   compare-with-dot.sh EXECUTABLE [PAIRS]
# Needs: dot (Debian package graphviz), /usr/bin/time (package time). Medians; differences under 20 % mean nothing.
set -euo pipefail
program=$(realpath "$1")
pairs=${2:-15}
here=$(cd "$(dirname "$0")/../.." && pwd)
example="$here/examples/${EXAMPLE:-brackmere-six}.yaml"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet run -c Release --project "$here/tests/HarnessDraw.Benchmarks" -- graph "$example" > "$work/wires.dot"
export HD_PROGRAM="$program" HD_EXAMPLE="$example" HD_WORK="$work"

milliseconds() { # command... -> wall time in ms (1/10) on stdout; exit 1 is a result (findings), anything above is a failure
  local begin end code=0
  begin=$(date +%s%N)
  "$@" > /dev/null 2> "$work/messages" || code=$?
  end=$(date +%s%N)
  [ $code -le 1 ] || { cat "$work/messages" >&2; exit 1; }
  awk -v ns=$((end - begin)) 'BEGIN { printf "%.1f\n", ns / 1e6 }'
}
median() { sort -n "$1" | awk '{ v[NR] = $1 } END { print (NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }

chart() { "$program" draw "$example" --sheets wall-chart --format svg --out "$work/chart"; }
layout() { dot -Tsvg "$work/wires.dot" -o "$work/wires.svg"; }
check() { "$program" check "$example"; }
everything() { /usr/bin/time -q -f '%e %M' -o "$work/all.time" "$program" draw "$example" --sheets wall-chart,connectors,cut-list --format svg,png,pdf --dpi 200 --out "$work/all"; }

layout # a graph that dot cannot draw is no comparison
milliseconds chart > /dev/null; milliseconds layout > /dev/null; milliseconds check > /dev/null # files into the cache
for _ in $(seq "$pairs"); do
  ours=$(milliseconds chart); theirs=$(milliseconds layout)
  echo "$ours" >> "$work/ours"; echo "$theirs" >> "$work/theirs"
  awk -v a="$ours" -v b="$theirs" 'BEGIN { printf "%.3f\n", a / b }' >> "$work/ratio"
  milliseconds check >> "$work/check"
done
for _ in 1 2 3; do milliseconds everything >> "$work/everything"; cat "$work/all.time" >> "$work/all.times"; done
peak=$(awk '{ if ($2 > m) m = $2 } END { printf "%.0f", m / 1024 }' "$work/all.times")

printf '| whole process, %s pairs, median | result | to reach |\n|---|--:|--:|\n' "$pairs"
printf '| wall chart of %s as SVG, reading and planning included | %s ms | 60 ms |\n' "$(basename "$example")" "$(median "$work/ours")"
printf '| dot -Tsvg, fixed ports, labels at both ends, same wires | %s ms | |\n' "$(median "$work/theirs")"
printf '| ratio, pair by pair | %s | 1.0 |\n' "$(median "$work/ratio")"
printf '| check | %s ms | 100 ms |\n' "$(median "$work/check")"
printf '| all sheets, all formats, 200 dpi | %s ms | 3000 ms |\n' "$(median "$work/everything")"
printf '| the same, peak memory | %s MB | 400 MB |\n' "$peak"
