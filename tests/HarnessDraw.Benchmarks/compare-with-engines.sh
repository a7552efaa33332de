#!/usr/bin/env bash
# Draws generated harnesses with the program, with Graphviz and with elk (layered, orthogonal, fixed ports) and prints what a measurer of SVG finds on each, as a table in Markdown.
#   compare-with-engines.sh "PROGRAM" MEASURER [CIRCUITS ...]
# MEASURER: a script that takes an SVG, --wire and --json. Needs: dot, python3, the benchmarks built; node and, in ELK_MODULES, a folder with elkjs (else elk is left out).
set -euo pipefail
program=$1
measurer=$(realpath "$2")
sizes=("${@:3}")
[ ${#sizes[@]} -gt 0 ] || sizes=(12 30 60)
here=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
tool=$(find "$here/tests/HarnessDraw.Benchmarks/bin/Release" -name HarnessDraw.Benchmarks.dll | head -n 1)

cat > "$work/elk.js" <<'JS'
// an undirected graph in DOT with record ports, as the benchmarks write it: laid out by elk and written as SVG
const [, , from, to] = process.argv, fs = require('fs'), ELK = require(process.env.ELK_MODULES + '/elkjs');
const nodes = {}, edges = [];
for (const line of fs.readFileSync(from, 'utf8').split('\n')) {
  const e = line.match(/^  ("[^"]*")(?::(\S+))? -- ("[^"]*")(?::(\S+))? \[taillabel=("[^"]*")/), n = line.match(/^  ("[^"]*") \[/);
  if (e) edges.push(e); else if (n) nodes[n[1]] = { id: n[1], width: 8, height: 8, ports: [], layoutOptions: {} };
}
const port = (node, p) => {
  const n = nodes[node]; if (!p) return node;
  const id = node + ':' + p;
  if (!n.ports.some(x => x.id === id)) n.ports.push({ id, width: 1, height: 1 });
  n.width = 110; n.height = 14 * n.ports.length + 10; n.layoutOptions = { 'elk.portConstraints': 'FIXED_ORDER' };
  return id;
};
const label = t => ({ text: t.slice(1, -1), width: 6 * t.length, height: 10, layoutOptions: {} });
const graph = { id: 'root', layoutOptions: { 'elk.algorithm': 'layered', 'elk.edgeRouting': 'ORTHOGONAL', 'elk.direction': 'RIGHT' }, children: Object.values(nodes),
  edges: edges.map((e, i) => ({ id: 'e' + i, sources: [port(e[1], e[2])], targets: [port(e[3], e[4])], labels: ['TAIL', 'HEAD'].map(p => ({ ...label(e[5]), layoutOptions: { 'elk.edgeLabels.placement': p } })) })) };
new ELK().layout(graph).then(g => {
  let s = `<svg xmlns="http://www.w3.org/2000/svg" width="${g.width}" height="${g.height}" viewBox="0 0 ${g.width} ${g.height}">`;
  for (const e of g.edges) {
    for (const sec of e.sections || []) s += `<polyline data-wire="${e.id}" fill="none" stroke="black" points="${[sec.startPoint, ...(sec.bendPoints || []), sec.endPoint].map(p => p.x + ',' + p.y).join(' ')}"/>`;
    for (const l of e.labels || []) s += `<text data-for="${e.id}" font-size="10" x="${l.x}" y="${l.y + 8}">${l.text}</text>`;
  }
  fs.writeFileSync(to, s + '</svg>');
});
JS

printf '| circuits | engine | s | crossings | wires over each other, em | texts on texts | texts on wires | ink, em | width to height |\n|--:|---|--:|--:|--:|--:|--:|--:|--:|\n'
row() { # circuits, engine, seconds, SVG, kind of wires
  python3 "$measurer" "$4" --wire "$5" --json > "$work/figures" || { printf '| %s | %s | %s | not measured |\n' "$1" "$2" "$3"; return; }
  python3 - "$1" "$2" "$3" "$work/figures" <<'PY'
import json, sys
f = json.load(open(sys.argv[4]))
f = f[0] if isinstance(f, list) else f
print('|', ' | '.join(sys.argv[1:4]), '|', ' | '.join(str(f[k]) for k in ('crossings', 'overlap_len_em', 'label_label', 'label_line', 'ink_em', 'aspect')), '|')
PY
}
timed() { local b e; b=$(date +%s%N); "$@" > /dev/null 2> "$work/messages" || [ $? -le 1 ] || { cat "$work/messages" >&2; exit 1; }; e=$(date +%s%N); awk -v ns=$((e - b)) 'BEGIN { printf "%.2f", ns / 1e9 }'; }

for n in "${sizes[@]}"; do
  mkdir -p "$work/$n"
  dotnet "$tool" generate "$n" "$work/$n"
  dotnet "$tool" graph "$work/$n/growth.yaml" > "$work/$n/wires.dot"
  t=$(timed $program draw "$work/$n/growth.yaml" --sheets wall-chart --format svg --out "$work/$n/chart")
  row "$n" here "$t" "$(find "$work/$n/chart" -name '*wall-chart*.svg' | sort | head -n 1)" data-wire
  t=$(timed dot -Tsvg "$work/$n/wires.dot" -o "$work/$n/dot.svg"); row "$n" dot "$t" "$work/$n/dot.svg" class:edge
  [ -z "${ELK_MODULES:-}" ] || { t=$(timed node "$work/elk.js" "$work/$n/wires.dot" "$work/$n/elk.svg"); row "$n" elk "$t" "$work/$n/elk.svg" data-wire; }
done
