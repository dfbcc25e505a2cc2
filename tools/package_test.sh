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
debootstrap --variant=minbase --include=bash-completion,man-db,curl bookworm "$root" "${mirror:-http://deb.debian.org/debian}" >/dev/null
mount -t proc proc "$root/proc"
cp /etc/resolv.conf "$root/etc/resolv.conf"
cp "$package" "$root/root/keenfall.deb"
# Debian's smallest installations leave man pages out; a desk's does not.
rm -f "$root"/etc/dpkg/dpkg.cfg.d/*

inside apt-get install -q -y --no-install-recommends /root/keenfall.deb >/dev/null || fail "cannot be installed"

[[ $(inside keenfall --version) == keenfall\ [0-9]* ]] || fail "does not say its version"
inside keenfall demo --quiet | grep -q "longer" || fail "the demo gives no answer"
inside man -w keenfall >/dev/null || fail "has no man page"
faults=$(inside man --warnings -l /usr/share/man/man1/keenfall.1.gz 2>&1 >/dev/null || true)
[[ -z $faults ]] || fail "its man page has faults: $faults"
completed=$(inside bash -c 'source /usr/share/bash-completion/completions/keenfall
  COMP_WORDS=(keenfall ju) COMP_CWORD=1; _keenfall; echo "${COMPREPLY[*]}"')
[[ $completed == judge ]] || fail "bash completes \"keenfall ju\" to \"$completed\""
[[ -e $root/usr/share/applications/keenfall.desktop ]] || fail "has no menu entry"
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

inside apt-get purge -q -y keenfall >/dev/null || fail "cannot be removed"
left=$(inside find / -xdev -path /proc -prune -o -iname '*keenfall*' -print | { grep -vE '^/root/|^/var/lib/apt|^/var/cache' || true; })
[[ -z $left ]] || fail "leaves behind: $left"
printf 'The package installs, runs and goes without a trace.\n'
