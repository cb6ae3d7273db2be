#pragma once

#include "engine/sitting/fields.hpp"

namespace matula::sitting {

/// Widest numbers a line may hold; what the bench can do with them it says itself.
inline constexpr double most_ml = 1000;
inline constexpr double most_seconds = 604800;
inline constexpr double most_mm = 1000;
inline constexpr double most_rcf = 100000;
inline constexpr double most_drops = 20;

// One list of fields an action, for reading and writing alike.
template <class F> void fields(F& f, bench::Pour& a) {
  f.name("from", a.from);
  f.name("to", a.to);
  f.number("volume_ml", a.volume_ml, 0, most_ml, true);
  f.flag("gently", a.gently);
}
template <class F> void fields(F& f, bench::Dispense& a) {
  f.name("reagent", a.reagent);
  f.name("to", a.to);
  f.number("volume_ml", a.volume_ml, 0, most_ml, true);
  f.flag("gently", a.gently);
}
template <class F> void fields(F& f, bench::Mix& a) {
  f.name("vessel", a.vessel);
  f.choice("manner", a.manner, {"swirl", "invert"});
  f.number("seconds", a.seconds, 0, most_seconds);
}
template <class F> void fields(F& f, bench::Move& a) {
  f.name("vessel", a.vessel);
  f.choice("place", a.place, {"rack", "hand", "flame", "bath"}, true);
  f.number("height", a.height, 0, 1);
  f.flag("towards_person", a.towards_person);
  f.flag("moving", a.moving);
}
template <class F> void fields(F& f, bench::LightFlame& a) {
  f.flag("on", a.on);
}
template <class F> void fields(F& f, bench::SetBath& a) {
  f.number("temperature_c", a.temperature_c, 0, 100, true);
  f.number("warming_c_per_min", a.warming_c_per_min, 0, 1000);
}
template <class F> void fields(F& f, bench::Float& a) {
  f.name("vessel", a.vessel);
  f.flag("wiped", a.wiped);
  f.flag("spun", a.spun);
}
template <class F> void fields(F&, bench::LiftFloat&) {}
template <class F> void fields(F&, bench::SpinFloat&) {}
template <class F> void fields(F&, bench::ClearBubbles&) {}
template <class F> void fields(F& f, bench::Thermometer& a) {
  f.name("vessel", a.vessel);
}
template <class F> void fields(F& f, bench::Smell& a) {
  f.name("vessel", a.vessel);
}
template <class F> void fields(F& f, bench::Look& a) {
  f.name("vessel", a.vessel);
  f.choice("card", a.view.card, {"white", "black", "printed"});
  f.choice("lamp", a.view.lamp, {"daylight", "indoor"});
  f.number("eye_mm", a.eye_mm, -most_mm, most_mm);
}
template <class F> void fields(F& f, bench::Protect& a) {
  f.flag("gloves", a.gloves);
  f.flag("goggles", a.goggles);
}
template <class F> void fields(F& f, bench::Discard& a) {
  f.name("vessel", a.vessel);
  f.choice("bin", a.bin, {"waste", "sink", "acid", "heavy_metal", "solvent", "nitroprusside", "biohazard"});
}
template <class F> void fields(F& f, bench::Refract& a) {
  f.name("vessel", a.vessel);
  f.flag("wiped", a.wiped);
}
template <class F> void fields(F& f, bench::Measure& a) {
  f.name("vessel", a.vessel);
  f.number("wavelength_nm", a.wavelength_nm, 0, most_mm);
  f.flag("blank", a.blank);
}
template <class F> void fields(F& f, bench::Centrifuge& a) {
  f.names("vessels", a.vessels);
  f.number("rcf", a.rcf, 0, most_rcf);
  f.number("seconds", a.seconds, 0, most_seconds);
}
template <class F> void fields(F& f, bench::Filter& a) {
  f.name("from", a.from);
  f.name("to", a.to);
  f.number("volume_ml", a.volume_ml, 0, most_ml, true);
  f.flag("fresh_paper", a.fresh_paper);
}
template <class F> void fields(F& f, bench::SprinkleSulphur& a) {
  f.name("vessel", a.vessel);
}
template <class F> void fields(F& f, bench::Tap& a) {
  f.name("vessel", a.vessel);
}
template <class F> void fields(F& f, bench::Hood& a) {
  f.flag("on", a.on);
}
template <class F> void fields(F& f, bench::WipeSpill& a) {
  f.flag("bleach", a.bleach);
}
template <class F> void fields(F& f, bench::DipPaper& a) {
  f.name("paper", a.paper);
  f.name("vessel", a.vessel);
  f.number("seconds", a.seconds, 0, most_seconds);
}
template <class F> void fields(F& f, bench::BlotPaper& a) {
  f.name("paper", a.paper);
}
template <class F> void fields(F& f, bench::LookAtPaper& a) {
  f.name("paper", a.paper);
}
template <class F> void fields(F& f, bench::DropOn& a) {
  f.name("paper", a.paper);
  f.name("reagent", a.reagent);
  f.number("drops", a.drops, 0, most_drops);
}
template <class F> void fields(F& f, bench::DiscardPaper& a) {
  f.name("paper", a.paper);
}
template <class F> void fields(F& /*f*/, bench::LayPaper& /*a*/) {}
template <class F> void fields(F& f, bench::Wait& a) {
  f.number("seconds", a.seconds, 0, most_seconds, true);
}
template <class F> void fields(F& f, Record& a) {
  f.name("item", a.item);
  f.name("value", a.value);
}
template <class F> void fields(F&, Finish&) {}

} // namespace matula::sitting
