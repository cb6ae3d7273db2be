#!/bin/sh
# Makes unlabelled pictures of tubes for a blind reading: make.sh MATULA TEST PER_GRADE SEED FOLDER
# FOLDER gets t01.png, t02.png ... in a random order and key.txt ("picture concentration grade"), which the reader must not
# see. Each picture holds the bench with the tube in the hand, once for every card (protein: black and printed) or moment
# (copper: shaken, and stood 10 minutes), side by side.
set -eu
matula=$1 test=$2 per_grade=$3 seed=$4 folder=$5
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$folder"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Doses drawn evenly on a logarithmic scale within each band (evenly from 0 in the lowest), then shuffled.
awk -v test="$test" -v n="$per_grade" -v seed="$seed" 'BEGIN { srand(seed) }
  $1 == test { for (i = 0; i < n; i++) {
    u = rand(); c = $3 > 0 ? $3 * exp(u * log($4 / $3)) : u * $4
    printf "%f %.1f %s\n", rand(), c, $2 } }' "$here/bands.txt" | sort -n | awk '{ print $2, $3 }' >"$work/doses"

steps_for() { # $1: which look
  case $test in
  ssa)
    echo '{"do":"pour","from":"specimen","to":"tube-1","volume_ml":3}'
    echo '{"do":"dispense","reagent":"ssa_3","to":"tube-1","volume_ml":3}'
    echo '{"do":"mix","vessel":"tube-1","manner":"invert","seconds":10}'
    echo '{"wait":590}'
    echo '{"do":"mix","vessel":"tube-1","manner":"invert","seconds":3}'
    ;;
  heat)
    echo '{"do":"pour","from":"specimen","to":"tube-1","volume_ml":9}'
    echo '{"do":"flame","on":true}'
    echo '{"do":"move","vessel":"tube-1","place":"flame","height":0.85}'
    echo '{"wait":100}'
    echo '{"do":"move","vessel":"tube-1","place":"rack"}'
    echo '{"do":"dispense","reagent":"acetic_acid_10","to":"tube-1","volume_ml":0.2}'
    echo '{"do":"move","vessel":"tube-1","place":"flame","height":0.85}'
    echo '{"wait":30}'
    echo '{"do":"move","vessel":"tube-1","place":"rack"}'
    echo '{"do":"flame","on":false}'
    echo '{"wait":20}'
    ;;
  benedict)
    echo '{"do":"dispense","reagent":"benedict","to":"tube-1","volume_ml":5}'
    echo '{"do":"pour","from":"specimen","to":"tube-1","volume_ml":0.5}'
    echo '{"do":"mix","vessel":"tube-1","manner":"invert","seconds":5}'
    echo '{"do":"flame","on":true}'
    echo '{"do":"move","vessel":"tube-1","place":"flame","height":0.5}'
    echo '{"wait":120}'
    echo '{"do":"move","vessel":"tube-1","place":"rack"}'
    echo '{"do":"flame","on":false}'
    echo '{"wait":60}'
    echo '{"do":"mix","vessel":"tube-1","manner":"invert","seconds":5}'
    [ "$1" != stood ] || echo '{"wait":600}'
    ;;
  esac
  case $1 in
  stood | shaken) echo '{"do":"look","vessel":"tube-1","card":"white"}' ;;
  *) echo "{\"do\":\"look\",\"vessel\":\"tube-1\",\"card\":\"$1\"}" ;;
  esac
}

species=albumin
looks="black printed"
if [ "$test" = benedict ]; then
  species=glucose
  looks="shaken stood"
fi

: >"$folder/key.txt"
number=0
while read -r dose grade; do
  number=$((number + 1))
  name=$(printf 't%02d' "$number")
  sed -e "s|^DOSE\$|$species = \"$dose mg/dL\"|" -e "s/^seed = 1\$/seed = $((seed * 100 + number))/" "$here/base.toml" >"$work/case.toml"
  parts=""
  for look in $looks; do
    steps_for "$look" >"$work/steps.jsonl"
    "$matula" picture "$work/case.toml" "$work/steps.jsonl" -o "$work/$look.png" --size 1280x800 >/dev/null
    # The hand view stands at the right third of the picture.
    convert "$work/$look.png" -gravity East -crop 436x800+0+0 +repage "$work/$look-hand.png"
    parts="$parts $work/$look-hand.png"
  done
  # shellcheck disable=SC2086 # the list is meant to be split
  convert $parts +append "$folder/$name.png"
  echo "$name $dose $grade" >>"$folder/key.txt"
done <"$work/doses"
echo "$number pictures in $folder"
