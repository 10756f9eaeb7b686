#!/usr/bin/env bash
# Opens a file in a real Helix in a terminal, with the configuration of src/editors/helix, and looks at the colours on the screen. Needs
# hx (Debian: hx), tmux and a C compiler. HX names another program.
set -euo pipefail
cd "$(dirname "$0")/../../.."

HX=${HX:-hx}
home=$(mktemp -d)
session=procscript-helix-$$
trap 'tmux kill-session -t "$session" 2>/dev/null || true; rm -rf "$home"' EXIT
mkdir -p "$home/helix/themes"
cp -r src/editors/helix/runtime "$home/helix"
{
    echo 'use-grammars = { only = ["procscript"] }'
    sed "s#/opt/procscript/#$PWD/#" src/editors/helix/languages.toml
} >"$home/helix/languages.toml"
printf 'theme = "seen"\n[editor]\ntrue-color = true\n[editor.lsp]\nenable = false\n' >"$home/helix/config.toml"
# A colour for each class, so that the screen tells them apart: its last two digits are what is looked for below.
cat >"$home/helix/themes/seen.toml" <<'END'
"ui.cursor" = { bg = "#202020" }
"ui.selection" = { bg = "#202020" }
"keyword.control.conditional" = "#010101"
"string" = "#010102"
"keyword.storage.type" = "#010103"
"type" = "#010104"
"variable" = "#010105"
"function.builtin" = "#010106"
"punctuation.bracket" = "#010107"
END

export XDG_CONFIG_HOME=$home
"$HX" --grammar build
tmux new-session -d -s "$session" -x 120 -y 30 -e XDG_CONFIG_HOME="$home" -e COLORTERM=truecolor "'$HX' tests/editor/neovim/library/wheel.proc"
failed=0
for _ in $(seq 100); do
    screen=$(tmux capture-pane -e -p -t "$session")
    [[ $screen == *$'38;2;1;1;6m'undo* ]] && break
    sleep 0.1
done

# seen COLOUR TEXT: whether the text stands on the screen in the colour of the theme.
seen() {
    if [[ $screen == *$'38;2;1;1;'"$1"'m'"$2"* ]]; then
        echo "ok - $2"
    else
        echo "not ok - $2 is not in colour $1"
        failed=1
    fi
}
seen 1 goal
seen 2 '"press.proc"'
seen 3 procedure
seen 4 wheel_off
seen 5 press
seen 6 undo
seen 5 guard_bolts
seen 7 '{'
[ "$failed" -eq 0 ] || printf '%s\n' "$screen"
exit "$failed"
