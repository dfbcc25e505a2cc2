#!/usr/bin/env bash
# Holds the Debian package to what it promises, on a machine that has nothing but Debian: a fresh root
# made by debootstrap, in which it is installed, used and removed again. As root; minutes, and some
# hundred megabytes of Debian's packages. Called by `./keen guard`.
#
#   package_test.sh PACKAGE.deb FOLDER   FOLDER: where the root is made, and removed at the end
set -euo pipefail

package=$(readlink -f "$1")
root=$2/clean-machine

fail() {
  printf 'package_test: %s\n' "$*" >&2
  exit 1
}

# Every file, but for what apt, dpkg and the loader keep of their own.
listed() {
  (cd "$root" && find . -xdev \( -path ./proc -o -path ./var/lib/dpkg -o -path ./var/lib/apt -o -path ./var/cache \
    -o -path ./var/log -o -path ./root -o -path ./tmp -o -name 'ld.so.cache*' \) -prune -o -print | LC_ALL=C sort)
}

inside() { chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin LC_ALL=C.UTF-8 HOME=/root DEBIAN_FRONTEND=noninteractive "$@"; }

remove_root() {
  umount "$root/proc" 2>/dev/null || true
  rm -rf --one-file-system "$root"
}

((EUID == 0)) || fail "needs root, to make a clean machine to try it on"
remove_root
trap remove_root EXIT
mkdir -p "$root"
mirror=$(cat /etc/apt/sources.list /etc/apt/sources.list.d/* 2>/dev/null |
  sed -nE 's/^(deb |URIs: )(\[[^]]*\] )?(https?:[^ ]+).*/\3/p' | head -n 1 || true)
debootstrap --variant=minbase --include=bash-completion,man-db,curl,fish bookworm "$root" "${mirror:-http://deb.debian.org/debian}" >/dev/null
mount -t proc proc "$root/proc"
cp /etc/resolv.conf "$root/etc/resolv.conf"
cp "$package" "$root/root/keenfall.deb"
# Debian's smallest installations leave man pages out; a desk's does not.
rm -f "$root"/etc/dpkg/dpkg.cfg.d/*

before=$(listed)
inside apt-get install -q -y --no-install-recommends /root/keenfall.deb >/dev/null || fail "cannot be installed"

[[ $(inside keenfall --version) == keenfall\ [0-9]* ]] || fail "does not say its version"
inside keenfall demo --quiet | grep -q "longer" || fail "the demo gives no answer"
inside man -w keenfall >/dev/null || fail "has no man page"
faults=$(inside man --warnings -l /usr/share/man/man1/keenfall.1.gz 2>&1 >/dev/null || true)
[[ -z $faults ]] || fail "its man page has faults: $faults"

# Typed at a terminal, with the Tab key; a file that is not there ends what the line begins.
typed=$({
  sleep 1
  printf 'source /usr/share/bash-completion/bash_completion\n'
  sleep 1
  printf 'keenfall ju\tnowhere.csv\n'
  sleep 2
  printf 'exit\n'
} | script -qc "chroot '$root' env -i PATH=/usr/bin:/bin TERM=dumb LC_ALL=C.UTF-8 HOME=/root bash --norc -i" /dev/null)
[[ $typed == *"keenfall judge nowhere.csv"* ]] || fail "bash makes something else of \"keenfall ju\" and Tab: $typed"
[[ $(inside fish -c "complete -C 'keenfall ju'") == judge* ]] || fail "fish does not complete \"keenfall ju\""
status=$(inside bash -c '
  keenfall open --demo /root/demo.keen --no-open >/root/said &
  for _ in $(seq 100); do [[ ! -s /root/said ]] || break; sleep 0.1; done
  address=$(sed -nE "s/.* (http[^ #]*).*/\1/p" /root/said)
  key=$(sed -nE "s/.*#key=([^ ]*).*/\1/p" /root/said)
  curl -s -o /dev/null -w "%{http_code} " "$address"
  curl -s -o /dev/null -w "%{http_code} " "${address}api/v1/home"
  curl -s -o /dev/null -w "%{http_code}" -H "X-Keenfall-Key: $key" "${address}api/v1/home"
  kill -TERM $!; wait $! || true')
[[ $status == "200 401 200" ]] || fail "open answers \"$status\" for the page, and for home without and with the key"

# From the menu, twice: the second start shows what the first has open. The desk is played by a script,
# which follows the private file to the address that it leads to.
cat >"$root/root/xdg-open" <<'DESK'
#!/bin/sh
sed -nE 's/.*<a href="([^"]*)".*/\1/p' "$1" >>/root/shown
DESK
chmod +x "$root/root/xdg-open"
entry=$(sed -n 's/^Exec=\(.*\) %f$/\1/p' "$root/usr/share/applications/keenfall.desktop")
menu=$(inside bash -c '
  export PATH=/root:$PATH DISPLAY=:9 XDG_RUNTIME_DIR=/root/runtime
  mkdir -m 700 /root/runtime
  '"$entry"' /root/demo.keen >/root/window &
  for _ in $(seq 100); do [[ ! -s /root/shown ]] || break; sleep 0.1; done
  '"$entry"'
  for _ in $(seq 100); do (($(wc -l </root/shown) < 2)) || break; sleep 0.1; done
  uniq -c /root/shown
  kill -HUP $!; wait $!; cat /root/window')
[[ $menu == "Keenfall is open already"*" 2 http://127.0.0.1:"*"Closing it stops Keenfall"*"Stopped." ]] ||
  fail "two starts from the menu came to: $menu"

inside apt-get purge -q -y --autoremove keenfall >/dev/null || fail "cannot be removed"
left=$(diff <(echo "$before") <(listed) || true)
[[ -z $left ]] || fail "leaves behind: $left"
printf 'The package installs, runs and goes without a trace.\n'
