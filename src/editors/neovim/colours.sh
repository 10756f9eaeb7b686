#!/usr/bin/env bash
# Has Neovim colour and fold ProcScript: compiles the parser of grammar/tree-sitter, and lays it with its queries into the folder that
# Neovim looks into by default, or into FOLDER, which must be on its runtimepath. Needs a C compiler.
#   colours.sh [FOLDER]
set -euo pipefail

folder=${1:-${XDG_DATA_HOME:-$HOME/.local/share}/nvim/site}
mkdir -p "$folder/parser" "$folder/queries/procscript"
folder=$(cd "$folder" && pwd)
cd "$(dirname "$0")/../../../grammar/tree-sitter"

# To another name first: an editor that has the old parser open keeps it.
"${CC:-cc}" -shared -fPIC -O2 -std=c11 -I src -o "$folder/parser/procscript.so.new" src/parser.c src/scanner.c
mv "$folder/parser/procscript.so.new" "$folder/parser/procscript.so"
cp queries/*.scm "$folder/queries/procscript"
echo "Neovim finds the parser and the queries in $folder"
