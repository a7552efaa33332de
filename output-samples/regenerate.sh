#!/usr/bin/env bash
# Writes what the examples give into this folder, one folder an example; arguments.txt has the arguments of each 'draw'.
# Pictures have 60 dpi here (the program's usual is 200) to keep the repository small. 'dotnet test' compares with a fresh run.
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build src/HarnessDraw.Cli -c Release -v quiet --nologo
for example in $(grep -l '^harness:' examples/*.yaml); do
  name=$(basename "$example" .yaml)
  rm -rf "output-samples/$name"
  while read -r arguments; do
    code=0
    # shellcheck disable=SC2086 # several arguments a line
    dotnet src/HarnessDraw.Cli/bin/Release/net10.0/harnessdraw.dll draw "$example" $arguments --out "output-samples/$name" < /dev/null || code=$?
    [ $code -le 1 ] # 1: drawn, but with findings that forbid building
  done < output-samples/arguments.txt
done
