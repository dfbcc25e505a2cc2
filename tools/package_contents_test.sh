#!/usr/bin/env bash
# Holds a Debian package of Keenfall to what is in it, without installing it: seconds. The clean machine
# is package_test.sh. What checks man pages, menu entries and metadata is asked where it is there.
#
#   package_contents_test.sh PACKAGE.deb
set -euo pipefail

package=$(readlink -f "$1")
unpacked=$(mktemp -d)
trap 'rm -rf "$unpacked"' EXIT

fail() {
  printf 'package_contents_test: %s\n' "$*" >&2
  exit 1
}
is_here() { command -v "$1" >/dev/null || { printf 'not checked by %s, which is not here\n' "$1" && false; }; }
field() { dpkg-deb --field "$package" "$1"; }

dpkg-deb --raw-extract "$package" "$unpacked"
cd "$unpacked"
program=$unpacked/usr/bin/keenfall
share=usr/share

expected="usr/bin/keenfall
$share/applications/keenfall.desktop
$share/bash-completion/completions/keenfall
$share/doc/keenfall/changelog.Debian.gz
$share/doc/keenfall/changelog.gz
$share/doc/keenfall/copyright
$share/fish/vendor_completions.d/keenfall.fish
$share/icons/hicolor/scalable/apps/keenfall.svg
$share/man/man1/keenfall.1.gz
$share/metainfo/keenfall.metainfo.xml
$share/mime/packages/keenfall-notebook.xml
$share/zsh/vendor-completions/_keenfall"
found=$(find usr -type f | LC_ALL=C sort)
[[ $found == "$expected" ]] || fail "holds other files than it should: $(diff <(echo "$expected") <(echo "$found"))"
md5sum --check --quiet DEBIAN/md5sums || fail "its sums are not those of its files"

[[ "keenfall $(field Version)" == "$("$program" --version)-"* ]] || fail "its version is not the program's"
depends=$(field Depends)
while read -r library; do
  # Other architectures' packages may hold one of the same name.
  owners=$(dpkg-query --search "*/$library" | sed 's/:.*//' | sort -u)
  named=$(grep -xFf <(sed 's/ ([^)]*)//g; s/, /\n/g' <<<"$depends") <<<"$owners" || true)
  [[ -n $named ]] || fail "does not depend on the package of $library ($(echo $owners)): $depends"
done < <(readelf --dynamic "$program" | sed -nE 's/.*NEEDED.*\[(.*)\]/\1/p')

# Every command and option that the program tells of stands on the man page and is completed.
page=$(gzip -dc $share/man/man1/keenfall.1.gz | sed 's/\\-/-/g')
completed() { # completed WORDS...: what bash makes of the last of them, one a line
  bash -c 'compopt() { :; }; source "$1"; shift; COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
    _keenfall keenfall "${@: -1}" "${@: -2:1}"; printf "%s\n" "${COMPREPLY[@]}"' \
    completed $share/bash-completion/completions/keenfall keenfall "$@"
}
commands=$("$program" help | sed -nE 's/^  keenfall ([a-z]+).*/\1/p' | sort -u)
[[ $(completed "" | grep -v '^--' | sort) == "$commands" ]] || fail "bash does not complete the commands: $commands"
for command in $commands; do
  [[ $command != help ]] || continue
  [[ $page == *".SH \"KEENFALL ${command^^}\""* ]] || fail "its man page leaves out $command"
  options=$(completed "$command" -- | sed 's/=$//' | sort -u)
  while read -r option; do
    [[ $page == *"$option"* ]] || fail "its man page leaves out $option of $command"
    grep -qxe "$option" <<<"$options" || fail "bash does not complete $option of $command"
  done < <("$program" help "$command" | grep -oE '^  (--[a-z-]+[^ ]*(, )?)+' | grep -oE -e '--[a-z-]+')
done

cp "$program" "$unpacked/not here.keen"
[[ $(completed take "") == *"not here.keen"* ]] || fail "bash does not complete the names of notebooks"
[[ $(completed take "DEB") == DEBIAN && $(completed steels "") == "" ]] || fail "bash completes other files"

if is_here man; then
  faults=$(man --warnings -l $share/man/man1/keenfall.1.gz 2>&1 >/dev/null || true)
  [[ -z $faults ]] || fail "its man page has faults: $faults"
fi
if is_here mandoc; then mandoc -Tlint $share/man/man1/keenfall.1.gz || fail "its man page has faults"; fi
if is_here desktop-file-validate; then desktop-file-validate $share/applications/keenfall.desktop; fi
if is_here appstreamcli; then
  faults=$(appstreamcli validate --no-net $share/metainfo/keenfall.metainfo.xml) ||
    fail "its metadata has faults: $faults"
fi
if is_here zsh; then zsh -n $share/zsh/vendor-completions/_keenfall || fail "zsh cannot read its completion"; fi
if is_here fish; then
  [[ $(fish --no-config -c "source $share/fish/vendor_completions.d/keenfall.fish; complete -C 'keenfall ju'") == judge* ]] ||
    fail "fish does not complete \"keenfall ju\""
fi
printf 'The package holds what it should, and its pages say what the program says.\n'
