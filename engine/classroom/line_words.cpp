#include "engine/classroom/line_words.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/report.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <type_traits>

namespace matula::classroom {
namespace {

const char* say(appearance::Card card) {
  return card == appearance::Card::White   ? "white"
         : card == appearance::Card::Black ? "black"
                                           : "the printed card";
}

const char* say(bench::Bin bin) {
  switch (bin) {
  case bench::Bin::Waste:
    return "the one waste vessel";
  case bench::Bin::Sink:
    return "the sink";
  case bench::Bin::Acid:
    return "the acid waste";
  case bench::Bin::HeavyMetal:
    return "the heavy metal waste";
  case bench::Bin::Solvent:
    return "the solvent waste";
  case bench::Bin::Nitroprusside:
    return "the nitroprusside waste";
  case bench::Bin::Biohazard:
    return "the biohazard bag";
  }
  return "";
}

const char* say(bench::Place place) {
  return place == bench::Place::Rack    ? "back into the rack"
         : place == bench::Place::Hand  ? "into the hand"
         : place == bench::Place::Flame ? "into the flame"
                                        : "into the bath";
}

const char* say_part(double height) {
  constexpr double upper = 0.7;
  constexpr double lower = 0.3;
  return height > upper ? "upper" : height > lower ? "middle" : "lower";
}

/// The words for each kind of action.
struct Words {
  const Names& names;

  std::string operator()(const bench::Pour& a) const {
    return fmt::format("pours {:g} mL from {} into {}{}", a.volume_ml, vessel_in_words(a.from),
                       vessel_in_words(a.to), a.gently ? ", gently down the wall" : "");
  }
  std::string operator()(const bench::Dispense& a) const {
    return fmt::format("adds {:g} mL {} to {}{}", a.volume_ml, names.reagent(a.reagent),
                       vessel_in_words(a.to), a.gently ? ", gently down the wall" : "");
  }
  std::string operator()(const bench::Mix& a) const {
    return fmt::format("{} {} for {}", a.manner == bench::Manner::Swirl ? "swirls" : "turns over",
                       vessel_in_words(a.vessel), scoring::say_time(a.seconds));
  }
  std::string operator()(const bench::Move& a) const {
    std::string words = fmt::format("puts {} {}", vessel_in_words(a.vessel), say(a.place));
    if (a.place == bench::Place::Flame) {
      words += fmt::format(", its {} part, {}{}", say_part(a.height), a.moving ? "in motion" : "held still",
                           a.towards_person ? ", the mouth towards a person" : "");
    }
    return words;
  }
  std::string operator()(const bench::LightFlame& a) const {
    return a.on ? "lights the burner" : "puts the burner out";
  }
  std::string operator()(const bench::SetBath& a) const {
    return a.warming_c_per_min > 0 ? fmt::format("sets the bath to {:g} °C, {:g} °C a minute",
                                                 a.temperature_c, a.warming_c_per_min)
                                   : fmt::format("sets the bath to {:g} °C", a.temperature_c);
  }
  std::string operator()(const bench::Float& a) const {
    return fmt::format("lowers the urinometer into {}, {}, {}", vessel_in_words(a.vessel),
                       a.wiped ? "wiped" : "not wiped", a.spun ? "spun" : "not spun");
  }
  std::string operator()(const bench::LiftFloat& /*a*/) const { return "lifts the urinometer out"; }
  std::string operator()(const bench::SpinFloat& /*a*/) const { return "spins the urinometer"; }
  std::string operator()(const bench::ClearBubbles& /*a*/) const {
    return "wipes bubbles off the urinometer";
  }
  std::string operator()(const bench::Thermometer& a) const {
    return fmt::format("holds the thermometer into {}", vessel_in_words(a.vessel));
  }
  std::string operator()(const bench::Smell& a) const {
    return fmt::format("smells {}", vessel_in_words(a.vessel));
  }
  std::string operator()(const bench::Look& a) const {
    std::string words =
        fmt::format("looks at {} against {}, by {}", vessel_in_words(a.vessel), say(a.view.card),
                    a.view.lamp == optics::Lamp::Daylight ? "daylight" : "lamp light");
    return a.eye_mm == 0 ? words : words + fmt::format(", the eye {:+.0f} mm from the surface", a.eye_mm);
  }
  std::string operator()(const bench::Protect& a) const {
    return a.gloves && a.goggles ? "has gloves and goggles on"
           : a.gloves            ? "has gloves on, no goggles"
           : a.goggles           ? "has goggles on, no gloves"
                                 : "takes gloves and goggles off";
  }
  std::string operator()(const bench::Discard& a) const {
    return fmt::format("empties {} into {}", vessel_in_words(a.vessel), say(a.bin));
  }
  std::string operator()(const bench::Refract& a) const {
    return fmt::format("puts a drop of {} on the refractometer, {}", vessel_in_words(a.vessel),
                       a.wiped ? "its prism wiped" : "its prism not wiped");
  }
  std::string operator()(const bench::Measure& a) const {
    return a.blank ? fmt::format("sets the photometer's zero by {} at {:g} nm", vessel_in_words(a.vessel),
                                 a.wavelength_nm)
                   : fmt::format("reads {} in the photometer at {:g} nm", vessel_in_words(a.vessel),
                                 a.wavelength_nm);
  }
  std::string operator()(const bench::Centrifuge& a) const {
    std::vector<std::string> vessels;
    for (const auto& one : a.vessels) {
      vessels.push_back(vessel_in_words(one));
    }
    return fmt::format("spins {} at {:g} g for {}", fmt::join(vessels, " and "), a.rcf,
                       scoring::say_time(a.seconds));
  }
  std::string operator()(const bench::Filter& a) const {
    return fmt::format("filters {:g} mL from {} into {} through {} paper", a.volume_ml,
                       vessel_in_words(a.from), vessel_in_words(a.to),
                       a.fresh_paper ? "a fresh" : "the same");
  }
  std::string operator()(const bench::SprinkleSulphur& a) const {
    return fmt::format("strews sulphur on {}", vessel_in_words(a.vessel));
  }
  std::string operator()(const bench::Tap& a) const {
    return fmt::format("taps {}", vessel_in_words(a.vessel));
  }
  std::string operator()(const bench::Hood& a) const {
    return a.on ? "works under the hood" : "works in the open room";
  }
  std::string operator()(const bench::WipeSpill& a) const {
    return a.bleach ? "takes up the spill with bleach" : "takes up the spill with towels and soap";
  }
  std::string operator()(const bench::DipPaper& a) const {
    return fmt::format("dips a paper ({}) into {} for {:g} s", names.paper(a.paper),
                       vessel_in_words(a.vessel), a.seconds);
  }
  std::string operator()(const bench::BlotPaper& a) const { return fmt::format("blots {}", a.paper); }
  std::string operator()(const bench::LookAtPaper& a) const {
    return fmt::format("holds {} beside its card", a.paper);
  }
  std::string operator()(const bench::DropOn& a) const {
    return fmt::format("lets {:g} drops of {} fall on {}", a.drops, names.reagent(a.reagent), a.paper);
  }
  std::string operator()(const bench::DiscardPaper& a) const {
    return fmt::format("throws {} away", a.paper);
  }
  std::string operator()(const bench::LayPaper& /*a*/) const { return "lays the filter paper out"; }
  std::string operator()(const bench::Wait& a) const {
    return a.seconds > 0 ? fmt::format("waits {}", scoring::say_time(a.seconds)) : "time goes by";
  }
};

/// The vessel an action names: the one poured into, not the one poured from.
struct About {
  template <class A> bench::VesselName operator()(const A& a) const {
    if constexpr (requires { a.vessel; }) {
      return a.vessel;
    } else if constexpr (requires { a.to; }) {
      return a.to;
    } else if constexpr (std::is_same_v<A, bench::Centrifuge>) {
      return a.vessels.empty() ? "" : a.vessels.front();
    } else {
      return "";
    }
  }
};

const std::map<std::string, std::string>& lines_without_marks() {
  static const std::map<std::string, std::string> words{{"colour", "Colour"},
                                                        {"clarity", "Clarity"},
                                                        {"odour", "Odour"},
                                                        {"sg.zero", "Float in water"},
                                                        {"sg.temperature", "Temperature of the specimen"},
                                                        {"sg.reading", "Float in the specimen"},
                                                        {"sg.corrected", "Specific gravity, corrected"},
                                                        {"aid.guide", "Help: led through the case"},
                                                        {"aid.text", "Help: size of the letters"},
                                                        {"aid.still", "Help: nothing moves"},
                                                        {"aid.hues", "Help: colours named in words"}};
  return words;
}

} // namespace

Names::Names(const assets::World& world, const scenario::Scenario& scenario, const scoring::Report& report)
    : world_(world), items_(lines_without_marks()) {
  for (const auto& mark : report.marks) {
    items_[mark.item] = mark.label;
  }
  for (const auto& decision : scenario.decisions) {
    items_["decision." + decision.key] = decision.prompt;
    for (const auto& [key, words] : decision.options) {
      answers_["decision." + decision.key + "=" + key] = words;
    }
  }
}

std::string Names::reagent(const std::string& key) const {
  const auto* found = world_.catalogue.find_reagent(key);
  return found == nullptr ? key : found->label;
}

std::string Names::paper(const std::string& kind) const {
  for (const auto& one : world_.papers) {
    if (one.key == kind) {
      return one.label;
    }
  }
  return kind;
}

std::string Names::item(const std::string& item) const {
  const auto found = items_.find(item);
  return found == items_.end() ? item : found->second;
}

std::string Names::value(const std::string& item, const std::string& value) const {
  const auto found = answers_.find(item + "=" + value);
  return found == answers_.end() ? value : found->second;
}

std::string vessel_in_words(const bench::VesselName& name) {
  return name == "specimen"            ? "the specimen"
         : name == "jar"               ? "the urinometer jar"
         : name == "water"             ? "the distilled water"
         : name == "esbach"            ? "the Esbach tube"
         : name.rfind("tube-", 0) == 0 ? "tube " + name.substr(5)
                                       : name;
}

std::string in_words(const sitting::Event& event, const Names& names) {
  if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    return std::visit(Words{names}, *action);
  }
  if (const auto* record = std::get_if<sitting::Record>(&event.what)) {
    const std::string item = names.item(record->item);
    const std::string colon = !item.empty() && item.back() == '?' ? "" : ":";
    return fmt::format("writes \"{}{} {}\"", item, colon, names.value(record->item, record->value));
  }
  return "hands the worksheet in";
}

std::string in_words(const bench::Outcome& outcome, const sitting::Event& event) {
  if (!outcome.done) {
    return "Not done: " + outcome.refused_because;
  }
  if (outcome.reading) {
    const auto& reading = *outcome.reading;
    return reading.off_scale
               ? fmt::format("The {} shows: {}", reading.instrument, reading.words)
               : fmt::format("The {} shows {}{}{}", reading.instrument,
                             reading.instrument == "photometer" ? fmt::format("{:.3f}", reading.value)
                                                                : fmt::format("{:.4f}", reading.value),
                             reading.words.empty() ? "" : ": ", reading.words);
  }
  if (outcome.thermometer_c) {
    return fmt::format("The thermometer shows {:.1f} °C", *outcome.thermometer_c);
  }
  const auto* action = std::get_if<bench::Action>(&event.what);
  if (action != nullptr && std::holds_alternative<bench::Smell>(*action)) {
    return outcome.odours.empty() ? "No particular odour"
                                  : fmt::format("Smell: {}", fmt::join(outcome.odours, ", "));
  }
  return "";
}

bench::VesselName vessel_of(const sitting::Event& event) {
  const auto* action = std::get_if<bench::Action>(&event.what);
  return action == nullptr ? "" : std::visit(About{}, *action);
}

bool is_tick(const sitting::Event& event) {
  const auto* action = std::get_if<bench::Action>(&event.what);
  const auto* wait = action == nullptr ? nullptr : std::get_if<bench::Wait>(action);
  return wait != nullptr && wait->seconds == 0;
}

} // namespace matula::classroom
