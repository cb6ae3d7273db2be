#!/bin/sh
# Drives the real window with real mouse and key events from an empty start through a whole case to the marks, kills it
# without warning on the way, and compares its marks with those the command line gives for the same log.
# Usage: window_drive.sh PROGRAM
set -eu
program=$1
for tool in Xvfb xdotool; do
  if ! command -v "$tool" >/dev/null; then
    echo "skipped: $tool is not installed"
    exit 77
  fi
done

work=$(mktemp -d)
map=$work/map
window_pid=
screen_pid=

clean_up() {
  [ -z "$window_pid" ] || kill -9 "$window_pid" 2>/dev/null || true
  [ -z "$screen_pid" ] || kill "$screen_pid" 2>/dev/null || true
  rm -rf "$work"
}
trap clean_up EXIT

fail() {
  echo "FAILED: $*" >&2
  echo "the window says:" >&2
  grep '^=' "$map" >&2 || true
  cat "$work/output" >&2 || true
  exit 1
}

fact() { sed -n "s/^=$1 //p" "$map" 2>/dev/null; }
place() { awk -v name="$1" '$1 == name { print $2, $3 }' "$map" 2>/dev/null; }

# until_true SECONDS COMMAND...: asks ten times a second.
until_true() {
  tries=$(($1 * 10))
  shift
  while ! "$@"; do
    tries=$((tries - 1))
    [ "$tries" -gt 0 ] || fail "waited in vain for: $*"
    sleep 0.1
  done
}

fact_is() { [ "$(fact "$1")" = "$2" ]; }
fact_is_not() { [ "$(fact "$1")" != "$2" ]; }
shown() { [ -n "$(place "$1")" ]; }
log_has() { [ "$(grep -c "$1" "$log")" -ge "$2" ]; }
time_is_past() { awk -v now="$(fact time_s)" -v then="$1" 'BEGIN { exit !(now + 0 >= then - 0.001) }'; }

frame_is_past() { now=$(fact frame) && [ "${now:-0}" -ge "$1" ]; }

press() { xdotool key "$1"; }

# Turns the wheel over the panel until the control shows.
bring() {
  shown "$1" && return
  for wheel in 5 4; do
    turns=40
    while [ $turns -gt 0 ]; do
      xdotool mousemove 1080 420 click $wheel
      sleep 0.15
      shown "$1" && sleep 0.3 && shown "$1" && return
      turns=$((turns - 1))
    done
  done
  fail "no control named $1"
}

# Clicks once the window itself says that the pointer is on the control: a slow frame may still be scrolling.
click() {
  tries_to_hit=8
  while [ $tries_to_hit -gt 0 ]; do
    bring "$1"
    # shellcheck disable=SC2046 # two words: x and y
    xdotool mousemove $(place "$1")
    looks=20
    while [ $looks -gt 0 ] && ! fact_is hovered "$1"; do
      sleep 0.1
      looks=$((looks - 1))
    done
    if fact_is hovered "$1" && sleep 0.2 && fact_is hovered "$1"; then
      seen=$(fact frame)
      xdotool click 1
      until_true 20 frame_is_past $((seen + 4)) # The pointer stays until press and release have been drawn.
      return
    fi
    tries_to_hit=$((tries_to_hit - 1))
  done
  fail "the pointer does not come to rest on $1"
}

# does WORDS CONTROL: clicks, and waits until one more line of the log holds WORDS.
does() {
  wanted=$(($(grep -c "$1" "$log" || true) + 1))
  click "$2"
  until_true 40 log_has "$1" "$wanted"
}

# type_into CONTROL TEXT. A busy display now and then loses a letter of a synthetic burst, so what stands in the field is
# read before Enter; Escape takes it back for another try.
type_into() {
  tries_left=6
  while [ $tries_left -gt 0 ]; do
    click "$1"
    until_true 20 fact_is typing 1
    sleep 0.3
    xdotool type --delay 100 "$2"
    looks=20
    while [ $looks -gt 0 ] && ! fact_is text "$2"; do
      sleep 0.1
      looks=$((looks - 1))
    done
    fact_is text "$2" && break
    press Escape
    until_true 20 fact_is typing 0
    tries_left=$((tries_left - 1))
  done
  fact_is text "$2" || fail "could not type $2 into $1"
  press Return
  until_true 20 fact_is typing 0
}

writes() {
  type_into "$1" "$2"
  until_true 20 log_has "\"item\":\"$1\",\"value\":\"$2\"" 1
}

waits() {
  then=$(awk -v now="$(fact time_s)" -v more="$1" 'BEGIN { print now + more }')
  click "wait.$1"
  until_true 90 time_is_past "$then"
  until_true 20 fact_is waiting 0
}

# Steps through the vessels by key until NAME is in the hand.
take() {
  while ! fact_is vessel "$1"; do
    before=$(fact vessel)
    press "$2"
    until_true 20 fact_is_not vessel "$before"
  done
}

tab() {
  press "$1"
  until_true 20 shown "$2"
}

# goes_to CONTROL KEY: moves the keyboard's focus by one key.
goes_to() {
  steps=60
  while ! fact_is focus "$1"; do
    before=$(fact focus)
    press "$2"
    until_true 10 fact_is_not focus "$before"
    steps=$((steps - 1))
    [ $steps -gt 0 ] || fail "the keyboard does not reach $1"
  done
}

open_window() {
  rm -f "$map"
  "$program" >"$work/output" 2>&1 &
  window_pid=$!
  until_true 60 fact_is screen start
}

Xvfb -displayfd 3 -screen 0 1280x800x24 -noreset 3>"$work/display" 2>/dev/null &
screen_pid=$!
until_true 30 test -s "$work/display"
DISPLAY=:$(cat "$work/display")
MATULA_WIDGET_MAP=$map
MATULA_SITTINGS=$work/sittings
export DISPLAY MATULA_WIDGET_MAP MATULA_SITTINGS

echo "An empty start, the first case"
open_window
click case.first_case
until_true 40 fact_is screen bench
log=$(fact log)

echo "Gloves and goggles"
tab d gloves
does '"do":"protect"' gloves
does '"do":"protect"' goggles
log_has '"gloves":true,"goggles":true' 1 || fail "gloves and goggles are not both on"

echo "The float in water, then in the specimen"
take water n
does '"do":"float"' float.in
waits 10
does '"do":"lift_float"' float.out
take jar m
type_into pour.ml 35
click pour.gently
does '"do":"pour"' pour
does '"do":"thermometer"' thermometer
does '"do":"float"' float.in
waits 10
does '"do":"lift_float"' float.out
tab s colour=colourless
writes sg.zero 1.001
writes sg.temperature 22
writes sg.reading 1.018

echo "Heat and acetic acid"
take tube-1 n
tab d gloves
type_into pour.ml 9
click pour.gently
does '"do":"pour"' pour
does '"do":"flame"' burner
does '"place":"flame"' heat.flame
waits 120
click bench.shelf:acetic_acid_10
until_true 20 fact_is bottle acetic_acid_10
type_into bottle.amount 0.2
does '"do":"dispense"' add
waits 30
does '"place":"rack"' heat.rack
does '"do":"flame"' burner

echo "Sulfosalicylic acid"
click bench.tube-2
until_true 20 fact_is vessel tube-2
type_into pour.ml 3
does '"do":"pour"' pour
click bench.shelf:ssa_3
until_true 20 fact_is bottle ssa_3
type_into bottle.amount 3
does '"do":"dispense"' add
does '"do":"mix"' mix.invert
waits 600
does '"do":"mix"' mix.turn
press b
until_true 20 log_has '"card":"black"' 1
tab s colour=colourless
does '"item":"ssa.grade"' ssa.grade=2+
does '"item":"heat.grade"' heat.grade=2+

echo "Killed without warning, and taken up again"
at=$(fact time_s)
kill -9 "$window_pid"
wait "$window_pid" 2>/dev/null || true
open_window
click resume.first_case-1
until_true 90 fact_is screen bench
time_is_past "$(awk -v at="$at" 'BEGIN { print at - 10 }')" || fail "bench time went back from $at to $(fact time_s)"
[ "$(fact log)" = "$log" ] || fail "another log was begun"
fact_is gloves 1 || fail "the gloves are off after taking it up again"

echo "Benedict"
tab d gloves
click bench.tube-3
until_true 20 fact_is vessel tube-3
click bench.shelf:benedict
until_true 20 fact_is bottle benedict
type_into bottle.amount 5
does '"do":"dispense"' add
type_into pour.ml 0.5
does '"do":"pour"' pour
does '"do":"mix"' mix.invert
does '"do":"flame"' burner
does '"place":"flame"' heat.flame
waits 120
does '"place":"rack"' heat.rack
does '"do":"flame"' burner
waits 60
press w

echo "The worksheet, by mouse"
tab s colour=colourless
does '"item":"colour"' colour=yellow
for entry in zero=1.017 temperature=1.019 protein=1.019 glucose=1.019; do
  writes "sg.step.${entry%=*}" "${entry#*=}"
done
writes sg.corrected 1.019
does '"item":"decision.meaning"' decision.meaning=protein

echo "The worksheet and handing in, by keyboard alone"
xdotool mousemove 400 60
tab s colour=colourless
until_true 20 fact_is focus colour=colourless
goes_to clarity=clear Down
press space
until_true 20 log_has '"item":"clarity","value":"clear"' 1
goes_to benedict.grade=negative Down
press Return
until_true 20 log_has '"item":"benedict.grade","value":"negative"' 1
press t
until_true 20 fact_is focus leave
goes_to hand_in Right
press Return
until_true 20 fact_is focus hand_in.yes
press Return
until_true 120 fact_is screen marks

echo "The marks"
marks=$log.marks.json
[ -s "$marks" ] || fail "no marks at $marks"
"$program" score "$log" --json >"$work/score.json" 2>"$work/score.errors" || fail "score: $(cat "$work/score.errors")"
cmp "$marks" "$work/score.json" || fail "the window's marks are not those of the command line"
for ledger in reading arithmetic process safety; do
  grep -q "\"ledger\": \"$ledger\"" "$marks" || fail "nothing was marked as $ledger"
done
awk '/"earned": [1-9]/ { some = 1 } END { exit !some }' "$marks" || fail "not one mark was earned"
! grep -q '"learner_vessel": ""' "$marks" || fail "a test that was done counts as not done"
for said in '"do":"dispense","reagent":"ssa_3","to":"tube-2","volume_ml":3.0' '"to":"jar","volume_ml":35.0,"gently":true'; do
  log_has "$said" 1 || fail "the log lacks $said"
done
echo "the same marks, byte for byte"
