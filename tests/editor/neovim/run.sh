#!/usr/bin/env bash
# Opens a small library in a headless Neovim, with the configuration and the parser of src/editors/neovim, looks at the colours, and asks
# the language server for what an author uses most. Needs nvim (Debian: neovim), a C compiler, and the built program or one that PROCSCRIPT
# names.
set -euo pipefail
cd "$(dirname "$0")/../../.."

PROCSCRIPT=${PROCSCRIPT:-$PWD/src/ProcScript.Cli/bin/Debug/net10.0/procscript}
[ -x "$PROCSCRIPT" ] || { echo "There is no program at $PROCSCRIPT: build it, or let PROCSCRIPT name one."; exit 2; }
export PROCSCRIPT

library=$(mktemp -d)
trap 'rm -rf "$library"' EXIT
cp tests/editor/neovim/library/*.proc "$library"
touch "$library/procscript.json"
site=$library/site
src/editors/neovim/colours.sh "$site"
cd "$library"
timeout 120 nvim --headless --clean -u "$OLDPWD/src/editors/neovim/procscript.lua" \
    --cmd "let g:procscript_path = \$PROCSCRIPT | set runtimepath+=$site" -S "$OLDPWD/tests/editor/neovim/attached.lua"
