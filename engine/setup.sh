#!/bin/sh
# Installs the Debian packages of engine/packages.txt that are missing. Needs root or sudo only when one is.
set -eu
here=$(cd "$(dirname "$0")" && pwd)

wanted=$(sed -e 's/#.*//' -e '/^[[:space:]]*$/d' "$here/packages.txt")
missing=""
for package in $wanted; do
  case $(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) in
  installed) ;;
  *) missing="$missing $package" ;;
  esac
done
[ -n "$missing" ] || exit 0

if [ "$(id -u)" -eq 0 ]; then
  as_root=""
elif command -v sudo >/dev/null 2>&1; then
  as_root="sudo"
else
  echo "Matula needs these Debian packages:$missing" >&2
  echo "Run this again as root, or with sudo installed, or install them first." >&2
  exit 1
fi
echo "Installing:$missing"
export DEBIAN_FRONTEND=noninteractive
$as_root apt-get -qq -o DPkg::Lock::Timeout=400 update
# shellcheck disable=SC2086 # the list is meant to be split
$as_root apt-get -qq -y -o DPkg::Lock::Timeout=400 install --no-install-recommends $missing >/dev/null
