#!/usr/bin/env bash
# Packs the .NET tool, installs it from the folder it was packed into, and has it do its work.
set -euo pipefail
cd "$(dirname "$0")/../.."
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

fail() { echo "$*"; exit 1; }

dotnet pack src/ProcScript.Cli -c Release -o "$scratch/packages" --nologo -v quiet
package=$(echo "$scratch"/packages/*.nupkg)
# Read whole before they are searched: a search that ends early would break the pipe, and so the script.
files=$(unzip -Z1 "$package")
manifest=$(unzip -p "$package" procscript.nuspec)
for file in README.md LICENSE THIRD-PARTY-NOTICES.md procscript.nuspec; do
    grep -qx "$file" <<<"$files" || fail "The package has no $file."
done
grep -q '<license type="expression">MIT</license>' <<<"$manifest" || fail "The package names no licence."
grep -q '<readme>README.md</readme>' <<<"$manifest" || fail "The package names no readme."

# From this folder and no other source: the package must bring all that it needs.
cat >"$scratch/nuget.config" <<EOF
<configuration><packageSources><clear /><add key="here" value="$scratch/packages" /></packageSources></configuration>
EOF
dotnet tool install procscript --tool-path "$scratch/bin" --configfile "$scratch/nuget.config" >/dev/null
version=$("$scratch/bin/procscript" --version)
# 'procscript 0.1.0 (commit …)' is made from procscript.0.1.0.nupkg.
program=${version%% (*}
[ "$package" = "$scratch/packages/${program/ /.}.nupkg" ] || fail "$package has the tool '$version'."
"$scratch/bin/procscript" check procedures
"$scratch/bin/procscript" build procedures -o "$scratch/packs" | tail -1
[ -n "$(find "$scratch/packs" -name cards.html)" ] || fail "The tool has built no cards."
"$scratch/bin/procscript" completions bash | bash -n
echo "$version, installed from $(basename "$package")"
