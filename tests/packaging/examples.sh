#!/usr/bin/env bash
# Has the commands of the example workflows do their work, with the program from a feed in a folder, as a shop would keep it.
set -euo pipefail
cd "$(dirname "$0")/../.."
checkout=$PWD
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

src/packaging/feed.sh "$scratch/feed"
for example in src/packaging/examples/*.yml; do
    name=$(basename "$example" .yml)
    home=$scratch/$name
    mkdir -p "$home/library"
    cp -r procedures src/packaging/examples/procscript.nuget.config "$home/library"
    git -C "$home/library" init -q -b main
    git -C "$home/library" add -A
    git -C "$home/library" -c user.name=a -c user.email=a@example.invalid commit -q -m first
    git -C "$home/library" update-ref refs/remotes/origin/main HEAD
    # What calls the program or installs it, in the order of the file, with the places of the build server in place of its variables.
    grep -oE '(dotnet tool install|procscript (format|check|build)) .*' "$checkout/$example" \
        | sed -e "s|\$(Agent.ToolsDirectory)/procscript|$home/bin|; s|/usr/local/bin|$home/bin|; s|\$(Build.ArtifactStagingDirectory)|$home|" >"$home/commands.sh"
    grep -q 'dotnet tool install' "$home/commands.sh"
    (cd "$home/library" && HOME=$home PATH=$home/.dotnet/tools:$home/bin:$PATH PROCSCRIPT_FEED=$scratch/feed DOTNET_CLI_HOME=$home \
        NUGET_PACKAGES=$home/packages bash -e "$home/commands.sh" >"$home/log" 2>&1) || { cat "$home/log"; echo "$example fails."; exit 1; }
    [ -n "$(find "$home" -name cards.html)" ] || { echo "$example has made no cards."; exit 1; }
    echo "$name: $(wc -l <"$home/commands.sh") commands"
done
