#!/usr/bin/env bash
# Makes the parser in src/ from grammar.js; with --check, fails when it differs from the one that is here. Needs node.
set -euo pipefail
cd "$(dirname "$0")"

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cp -r . "$scratch/made"
program=$PWD/tree-sitter.sh
(cd "$scratch/made" && "$program" generate --no-bindings)

if [ "${1:-}" = --check ]; then
    diff -r --brief src "$scratch/made/src" || { echo "The parser is not the one of grammar.js: run grammar/tree-sitter/generate.sh"; exit 1; }
else
    cp -r "$scratch/made/src" .
fi
