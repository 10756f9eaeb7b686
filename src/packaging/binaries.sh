#!/usr/bin/env bash
# Makes the self-contained native program, one archive a platform, with licence, readme, manual page and completions beside it.
#
#   src/packaging/binaries.sh FOLDER [RID...]
#
# A platform's program is linked on that platform, by its own tools: linux-x64, linux-arm64 (clang and zlib's headers), osx-x64, osx-arm64
# (Xcode), win-x64, win-arm64 (the C++ tools of Visual Studio). Without RIDs: the platform this runs on.
set -euo pipefail
folder=${1:?"usage: binaries.sh FOLDER [RID...]"}
shift
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
cd "$(dirname "$0")/../.."
[ $# -gt 0 ] || set -- "$(dotnet --info | sed -n 's/^ *RID: *//p')"
version=$(dotnet msbuild src/ProcScript.Cli -getProperty:Version)

for platform in "$@"; do
    name=procscript-$version-$platform
    rm -rf "${folder:?}/$name"
    dotnet publish src/ProcScript.Cli -c Release -r "$platform" -o "$folder/$name" -p:DebugType=none --nologo -v quiet
    # Symbols and the comments on the code are for those who mend the program.
    find "$folder/$name" -depth \( -name '*.dbg' -o -name '*.dSYM' -o -name '*.pdb' -o -name '*.xml' \) -exec rm -rf {} +
    cp LICENSE src/packaging/README.md src/packaging/THIRD-PARTY-NOTICES.md src/packaging/procscript.1 "$folder/$name"
    # The notices of the runtime, which is a part of the program, as the SDK has them.
    cp "$(dirname "$(readlink -f "$(command -v dotnet)")")/ThirdPartyNotices.txt" "$folder/$name/DOTNET-NOTICES.txt"
    mkdir "$folder/$name/completions"
    cp src/ProcScript.Cli/Completions/* "$folder/$name/completions"
    tar -C "$folder" -czf "$folder/$name.tar.gz" "$name"
    (cd "$folder" && sha256sum "$name.tar.gz" >"$name.tar.gz.sha256" && cat "$name.tar.gz.sha256")
done
