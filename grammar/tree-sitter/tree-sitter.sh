#!/usr/bin/env bash
# Runs tree-sitter's own program, in the one version that the parser is made with: the one on the search path, or Debian's. That is
# fetched once, from the Debian that this machine installs from, and kept in the cache with the libraries it was built for; nothing is
# installed.
set -euo pipefail

version=0.22.6
suite=trixie
cache=${XDG_CACHE_HOME:-$HOME/.cache}/procscript/tree-sitter-$version

fetch() {
    local scratch site options package
    scratch=$(mktemp -d)
    site=$(apt-get indextargets --format '$(SITE)' 'Created-By: Packages' 'Origin: Debian' | grep -v security | head -1)
    [ -n "$site" ] || { echo "tree-sitter $version is not here, and apt knows no Debian to fetch it from." >&2; return 1; }
    mkdir -p "$scratch"/{lists,archives}/partial "$scratch/debs" "$scratch/root"
    echo "deb [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] $site $suite main" >"$scratch/sources.list"
    options=(-qq -o "Dir::Etc::SourceList=$scratch/sources.list" -o Dir::Etc::SourceParts=- -o "Dir::State::Lists=$scratch/lists"
        -o "Dir::Cache=$scratch" -o Dir::State::status=/dev/null -o APT::Sandbox::User=root -o Acquire::Languages=none
        -o Acquire::IndexTargets::deb::DEP-11::DefaultEnabled=false)
    apt-get "${options[@]}" update >&2
    (cd "$scratch/debs" && apt-get "${options[@]}" download tree-sitter-cli libc6 libgcc-s1 >&2)
    for package in "$scratch"/debs/*.deb; do
        dpkg-deb -x "$package" "$scratch/root"
    done
    echo '{ "parser-directories": [] }' >"$scratch/root/config.json"
    mkdir -p "$(dirname "$cache")"
    rm -rf "$cache"
    mv "$scratch/root" "$cache"
    rm -rf "$scratch"
}

# A parser that was compiled for another checkout is not taken for this one's.
TREE_SITTER_LIBDIR=$cache/parsers/$(cat "$(dirname "$0")"/src/*.[ch] | cksum | tr ' ' -)
export TREE_SITTER_LIBDIR
if tree-sitter --version 2>/dev/null | grep -qF "$version"; then
    exec tree-sitter "$@"
fi

[ -x "$cache/usr/bin/tree-sitter" ] || fetch
libraries=$(echo "$cache"/usr/lib/*-linux-gnu*)
export TREE_SITTER_DIR=$cache
exec "$(echo "$libraries"/ld-linux-*.so.*)" --library-path "$libraries" "$cache/usr/bin/tree-sitter" "$@"
