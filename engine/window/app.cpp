#include "engine/window/author.hpp"
#include "engine/window/exam_view.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

void App::say(const std::string& words, bool refusal) {
  message = words;
  message_is_refusal = refusal;
}

namespace {

std::string say_reading(const bench::Reading& reading) {
  if (reading.instrument == "photometer") {
    return reading.off_scale ? "Photometer: " + reading.words
                             : fmt::format("Photometer: {:.3f} A. {}", reading.value, reading.words);
  }
  if (reading.off_scale && reading.value < 1) {
    return "Refractometer: " + reading.words;
  }
  return fmt::format("Refractometer: {} {:.4f}. {}", reading.off_scale ? "beyond" : "the edge stands at",
                     reading.value, reading.words);
}

} // namespace

void App::act(const bench::Action& action, const std::string& done_words) {
  const bench::Outcome outcome = desk->act(action);
  changed = true;
  // A caution stands until the next act of the hand, not through a wait.
  if (!outcome.caution.empty() || !std::holds_alternative<bench::Wait>(action)) {
    caution = outcome.caution;
  }
  if (!outcome.done) {
    say(outcome.refused_because, true);
    return;
  }
  if (!done_words.empty()) {
    say(done_words);
  }
  if (outcome.reading) {
    say(say_reading(*outcome.reading));
  } else if (outcome.thermometer_c) {
    say(fmt::format("{}: the thermometer shows {:.1f} °C.", say_vessel(hands.vessel),
                    *outcome.thermometer_c));
  } else if (std::holds_alternative<bench::Smell>(action)) {
    std::string words;
    for (const std::string& odour : outcome.odours) {
      words += (words.empty() ? "" : ", ") + odour;
    }
    say(say_vessel(hands.vessel) + (words.empty() ? ": no particular odour." : ", smell: " + words + "."));
  }
}

void App::record(const std::string& item, const std::string& value, const std::string& words) {
  const std::string problem = desk->record(item, value);
  say(problem.empty() ? "Written down: " + words : problem, !problem.empty());
}

void App::use_aid(const std::string& item, const std::string& value) {
  keep_aids(options.sittings, aids);
  clock.set_at_once(aids.still);
  if (desk && !desk->finished()) {
    if (const std::string problem = desk->record(item, value); !problem.empty()) {
      say(problem, true);
    }
  }
}

void App::note_aids() {
  guide_open = true;
  guide_asked = 0;
  clock.set_at_once(aids.still);
  const auto note = [this](const char* item, const std::string& value) { (void)desk->record(item, value); };
  if (desk->guide()) {
    note("aid.guide", "yes");
  }
  if (aids.text_scale != 1) {
    note("aid.text", fmt::format("{:.0f} %", static_cast<double>(aids.text_scale) * 100));
  }
  if (aids.still) {
    note("aid.still", "yes");
  }
  if (aids.hues) {
    note("aid.hues", "yes");
  }
}

namespace {

/// The bench before a new specimen: nothing in the hands, nothing half written.
void lay_out(App& app) {
  app.hands = Hands{};
  app.drafts.clear();
  app.clock = Clock{};
  app.tab = app.desk->brief().reception ? Tab::Reception : Tab::Request;
  app.sheet = -1;
  app.focus_panel = app.changed = true;
  app.caution = "specimen";
  app.note_aids();
  app.say("The specimen has arrived. Read the request, protect yourself, then begin.");
}

/// The bench as it was left.
void come_back(App& app) {
  app.hands = Hands{};
  app.drafts = app.desk->worksheet();
  app.clock = Clock{};
  app.sheet = -1;
  app.tab = Tab::Worksheet;
  app.focus_panel = app.changed = true;
  app.note_aids();
  app.say("Back where you left it, at " + say_time(app.desk->time_s()) + " bench time.");
}

} // namespace

void App::open(const std::filesystem::path& scenario_file) {
  auto begun = desk::Desk::begin(ground, scenario_file, options.sittings);
  if (!begun) {
    say(scenario::to_text(begun.error()), true);
    return;
  }
  desk.emplace(std::move(*begun));
  lay_out(*this);
}

void App::resume(const std::filesystem::path& sitting_file) {
  const std::string case_file = desk::look_into(sitting_file).scenario + ".toml";
  const bool own = std::filesystem::exists(own_cases(*this) / case_file);
  auto resumed = desk::Desk::resume(ground, sitting_file, own ? own_cases(*this) : options.scenarios);
  if (!resumed) {
    say(scenario::to_text(resumed.error()), true);
    return;
  }
  desk.emplace(std::move(*resumed));
  come_back(*this);
}

void App::sit(tl::expected<desk::Desk, scenario::Problems> examined) {
  if (!examined) {
    say(scenario::to_text(examined.error()), true);
    return;
  }
  desk.emplace(std::move(*examined));
  if (desk->finished()) {
    focus_screen = 3;
    message.clear();
  } else if (constexpr double opened_s = 0.01; // A case that was only opened stands at a tick of the clock.
             desk->time_s() > opened_s || !desk->worksheet().empty()) {
    come_back(*this);
  } else {
    lay_out(*this);
  }
}

void App::close_case() {
  desk->note_time();
  desk.reset();
  scene.reset();
  message.clear();
  focus_screen = 3;
  if (exam && exam->room) {
    exam->cases = exam->room->cases();
  }
  find_cases(*this);
}

void App::select(const bench::VesselName& vessel) {
  if (hands.vessel != vessel) {
    hands.vessel = vessel;
    look();
  }
}

void App::look() {
  act(bench::Look{hands.vessel, hands.view, static_cast<double>(hands.eye_mm)});
}

std::vector<bench::VesselName> App::vessel_names() const {
  std::vector<bench::VesselName> names;
  if (scene) {
    for (const auto& vessel : scene->vessels) {
      names.push_back(vessel.name);
    }
  }
  // The specimen first, tubes last and by number.
  const auto rank = [](const bench::VesselName& name) {
    const bool tube = name.rfind("tube-", 0) == 0;
    return tube ? 100 + std::atoi(name.c_str() + 5) : name == "specimen" ? 0 : 1;
  };
  std::stable_sort(names.begin(), names.end(),
                   [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return names;
}

bool App::something_heats() const {
  return scene && scene->flame_on &&
         std::any_of(scene->vessels.begin(), scene->vessels.end(),
                     [](const bench::SeenVessel& vessel) { return vessel.place == bench::Place::Flame; });
}

std::string say_vessel(const bench::VesselName& name) {
  if (name == "specimen") {
    return "Specimen";
  }
  if (name == "jar") {
    return "Urinometer jar";
  }
  if (name == "water") {
    return "Distilled water";
  }
  if (name == "esbach") {
    return "Esbach tube";
  }
  return name.rfind("tube-", 0) == 0 ? "Tube " + name.substr(5) : name;
}

std::string say_time(double seconds) {
  const auto whole = static_cast<long>(seconds);
  return whole >= 3600 ? fmt::format("{}:{:02}:{:02}", whole / 3600, whole / 60 % 60, whole % 60)
                       : fmt::format("{}:{:02}", whole / 60, whole % 60);
}

} // namespace matula::window
