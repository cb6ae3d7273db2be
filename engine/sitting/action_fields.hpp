#pragma once

#include "sim/bench/action.hpp"

#include <string_view>
#include <variant>

namespace matula::sitting {

/// The word for each action in a log, in the order of bench::Action.
inline constexpr std::string_view action_words[] = {
    "pour", "dispense", "mix",         "move",  "light_flame", "set_bath", "float",   "lift_float",
    "spin", "wipe",     "thermometer", "smell", "look",        "protect",  "discard", "wait"};
static_assert(std::size(action_words) == std::variant_size_v<bench::Action>);

// One line an action: the names its fields carry in a log. Reading and writing both go through these, so they
// cannot drift apart. `fields.must` is a field that has to be written, `fields.may` one that keeps its
// default.

template <class F> void visit_fields(F& fields, bench::Pour& a) {
  fields.must("from", a.from);
  fields.must("to", a.to);
  fields.must("volume_ml", a.volume_ml, 0.01, 2000.0);
  fields.may("gently", a.gently);
}
template <class F> void visit_fields(F& fields, bench::Dispense& a) {
  fields.must("reagent", a.reagent);
  fields.must("to", a.to);
  fields.must("volume_ml", a.volume_ml, 0.01, 2000.0);
  fields.may("gently", a.gently);
}
template <class F> void visit_fields(F& fields, bench::Mix& a) {
  fields.must("vessel", a.vessel);
  fields.may("manner", a.manner);
  fields.may("seconds", a.seconds, 0.5, 600.0);
}
template <class F> void visit_fields(F& fields, bench::Move& a) {
  fields.must("vessel", a.vessel);
  fields.must("place", a.place);
  fields.may("height", a.height, 0.0, 1.0);
  fields.may("towards_person", a.towards_person);
  fields.may("moving", a.moving);
}
template <class F> void visit_fields(F& fields, bench::LightFlame& a) {
  fields.may("on", a.on);
}
template <class F> void visit_fields(F& fields, bench::SetBath& a) {
  fields.must("temperature_c", a.temperature_c, 0.0, 100.0);
}
template <class F> void visit_fields(F& fields, bench::Float& a) {
  fields.must("vessel", a.vessel);
  fields.may("wiped", a.wiped);
  fields.may("spun", a.spun);
}
template <class F> void visit_fields(F& /*fields*/, bench::LiftFloat& /*a*/) {}
template <class F> void visit_fields(F& /*fields*/, bench::SpinFloat& /*a*/) {}
template <class F> void visit_fields(F& /*fields*/, bench::ClearBubbles& /*a*/) {}
template <class F> void visit_fields(F& fields, bench::Thermometer& a) {
  fields.must("vessel", a.vessel);
}
template <class F> void visit_fields(F& fields, bench::Smell& a) {
  fields.must("vessel", a.vessel);
}
template <class F> void visit_fields(F& fields, bench::Look& a) {
  fields.must("vessel", a.vessel);
  fields.may("card", a.view.card);
  fields.may("lamp", a.view.lamp);
  fields.may("eye_mm", a.eye_mm, -100.0, 100.0);
}
template <class F> void visit_fields(F& fields, bench::Protect& a) {
  fields.may("gloves", a.gloves);
  fields.may("goggles", a.goggles);
}
template <class F> void visit_fields(F& fields, bench::Discard& a) {
  fields.must("vessel", a.vessel);
}
template <class F> void visit_fields(F& fields, bench::Wait& a) {
  fields.must("seconds", a.seconds, 0.0, 86400.0);
}

} // namespace matula::sitting
