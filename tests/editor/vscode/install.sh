#!/usr/bin/env bash
# Installs the server edition of VS Code into a folder, from npm: it compiles native modules, which takes several minutes.
# Debian packages that it needs: libkrb5-dev libx11-dev libxkbfile-dev libsecret-1-dev pkg-config, a C++ compiler and python3.
set -euo pipefail
folder=${1:?"usage: install.sh FOLDER"}
version=4.139.1

mkdir -p "$folder/node" "$folder/code"
npm install --prefix "$folder/node" --no-audit --no-fund node@24
export PATH="$folder/node/node_modules/node/bin:$PATH"
npm install --prefix "$folder/code" --no-audit --no-fund --ignore-scripts "code-server@$version"
cd "$folder/code"
chmod +x node_modules/cross-env/dist/bin/*.js
# It takes node's version from what npm says of itself.
(cd node_modules/code-server && npm_config_user_agent="npm/11 node/v24.0.0 linux x64" bash ./postinstall.sh)
npm rebuild argon2
