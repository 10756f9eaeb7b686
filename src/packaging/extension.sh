#!/usr/bin/env bash
# Makes the VS Code extension for the platform this runs on, with the native program in it.
#
#   src/packaging/extension.sh FOLDER
#
# Needs npm, and what binaries.sh needs.
set -euo pipefail
folder=${1:?"usage: extension.sh FOLDER"}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
cd "$(dirname "$0")/../.."
platform=$(dotnet --info | sed -n 's/^ *RID: *//p')
src/packaging/binaries.sh "$folder" "$platform" >/dev/null
version=$(dotnet msbuild src/ProcScript.Cli -getProperty:Version)
# The editor's names of platforms are those of node.
target=${platform/osx/darwin}
target=${target/win-/win32-}
[ -d src/vscode/node_modules ] || npm --prefix src/vscode ci --ignore-scripts --no-audit --no-fund --loglevel error
PROCSCRIPT_PROGRAM=$folder/procscript-$version-$platform npm --prefix src/vscode run build >/dev/null
(cd src/vscode/dist && ../node_modules/.bin/vsce package --no-dependencies --allow-missing-repository --target "$target" --out "$folder/procscript-$target.vsix")
