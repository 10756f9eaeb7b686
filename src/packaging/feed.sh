#!/usr/bin/env bash
# Packs the .NET tool from this checkout into a folder, which is a feed as it is; or push the package to your shop's package server from there.
# The workflows in examples install it from that feed alone, by its version.
#
#   src/packaging/feed.sh FOLDER
set -euo pipefail
folder=${1:?"usage: feed.sh FOLDER"}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
cd "$(dirname "$0")/../.."
dotnet pack src/ProcScript.Cli -c Release -o "$folder" --nologo -v quiet
package=procscript.$(dotnet msbuild src/ProcScript.Cli -getProperty:Version).nupkg
(cd "$folder" && sha256sum "$package" >"$package.sha256" && cat "$package.sha256")
