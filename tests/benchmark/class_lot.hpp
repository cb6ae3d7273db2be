#pragma once

// Sittings of twelve tests as students would hand them in: four in tubes, eight pads of one strip, with
// times, volumes and words drawn anew for each.

#include "engine/assets/world.hpp"
#include "engine/records/marker.hpp"
#include "engine/sitting/event_json.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"
#include "tests/engine/scenario_words.hpp"

#include <array>
#include <random>
#include <sstream>
#include <stdexcept>
#include <string>

namespace matula::bench_tests {

inline const std::string twelve_scenario = test::in_words(
    {.title = "Twelve tests",
     .level = "exam",
     .seed = "12",
     .story = "A specimen for measuring the program's speed.",
     .debrief = "Protein and sugar.",
     .request = "Everything, please.",
     .volume = "100 mL",
     .dissolved = "albumin = \"130 mg/dL\"\nglucose = \"700 mg/dL\"\n",
     .reagents = R"("ssa_3", "acetic_acid_3", "acetic_acid_10", "benedict", "nitric_acid_conc")",
     .tests =
         R"("heat", "ssa", "heller", "benedict", "strip_protein", "strip_glucose", "strip_ketones", "strip_bilirubin", "strip_urobilinogen", "strip_blood", "strip_nitrite", "strip_leucocytes")",
     .decision = R"(key = "meaning"
prompt = "What do the findings mean?"
right = "both"
why = "Cloud and colour say so."
[decision.options]
protein = "Protein is there"
sugar = "Sugar is there"
both = "Both are there"
)"});

class TwelveTests {
public:
  explicit TwelveTests(const assets::World& world) : dice_(12) {
    const auto scenario = scenario::parse(twelve_scenario, "twelve.toml", world.catalogue);
    if (!scenario) {
      throw std::runtime_error(scenario::to_text(scenario.error()));
    }
    head_ = sitting::to_line(sitting::header_for(*scenario)) + '\n';
  }

  /// One more sitting's log, no two alike.
  std::string log() {
    std::ostringstream out;
    out << R"({"do":"protect","gloves":true,"goggles":true})" << '\n'
        << R"({"do":"mix","vessel":"specimen","manner":"swirl","seconds":)" << near(5) << "}\n";
    tube(out, "tube-1", 10);
    out << R"({"do":"flame","on":true})" << '\n'
        << R"({"do":"move","vessel":"tube-1","place":"flame","height":0.85,"towards_person":false,"moving":true})"
        << '\n'
        << R"({"wait":)" << near(95) << "}\n"
        << R"({"do":"move","vessel":"tube-1","place":"rack"})" << '\n'
        << R"({"do":"flame","on":false})" << '\n'
        << R"({"do":"look","vessel":"tube-1","card":"black"})" << '\n'
        << R"({"do":"dispense","reagent":"acetic_acid_3","to":"tube-1","volume_ml":0.15})" << '\n'
        << R"({"do":"mix","vessel":"tube-1","manner":"invert","seconds":)" << near(5) << "}\n";
    looked(out, "tube-1", "heat");
    tube(out, "tube-2", 3);
    out << R"({"do":"dispense","reagent":"ssa_3","to":"tube-2","volume_ml":)" << near(3) << "}\n"
        << R"({"do":"mix","vessel":"tube-2","manner":"invert","seconds":)" << near(5) << "}\n"
        << R"({"wait":)" << near(300) << "}\n";
    looked(out, "tube-2", "ssa");
    out << R"({"do":"dispense","reagent":"benedict","to":"tube-3","volume_ml":5})" << '\n';
    tube(out, "tube-3", 0.5);
    out << R"({"do":"mix","vessel":"tube-3","manner":"swirl","seconds":5})" << '\n'
        << R"({"do":"bath","temperature_c":100})" << '\n'
        << R"({"wait":)" << near(240) << "}\n"
        << R"({"do":"move","vessel":"tube-3","place":"bath"})" << '\n'
        << R"({"wait":)" << near(300) << "}\n"
        << R"({"do":"move","vessel":"tube-3","place":"rack"})" << '\n';
    looked(out, "tube-3", "benedict");
    out << R"({"do":"dispense","reagent":"nitric_acid_conc","to":"tube-4","volume_ml":)" << near(3) << "}\n"
        << R"({"do":"pour","from":"specimen","to":"tube-4","volume_ml":)" << near(3) << ",\"gently\":true}\n"
        << R"({"wait":)" << near(180) << "}\n";
    looked(out, "tube-4", "heller");
    out << R"({"do":"dip","paper":"strip","vessel":"specimen","seconds":1})" << '\n'
        << R"({"do":"blot","paper":"strip-1"})" << '\n'
        << R"({"wait":)" << near(60) << "}\n";
    for (const char* const pad :
         {"protein", "glucose", "ketones", "bilirubin", "urobilinogen", "blood", "nitrite", "leucocytes"}) {
      write(out, std::string("strip_") + pad, pad);
      out << R"({"wait":)" << near(4) << "}\n";
    }
    out << R"({"do":"record","item":"decision.meaning","value":")" << pick({"protein", "sugar", "both"})
        << "\"}\n"
        << R"({"do":"finish"})" << '\n';
    return head_ + with_times(out.str());
  }

private:
  double even() { return static_cast<double>(dice_() >> 11) / 9007199254740992.0; }
  double near(double value) {
    return static_cast<double>(static_cast<int>(value * (0.8 + 0.4 * even()) * 100)) / 100;
  }
  std::string pick(std::initializer_list<const char*> words) {
    return *(words.begin() + static_cast<std::ptrdiff_t>(even() * static_cast<double>(words.size())));
  }
  void tube(std::ostream& out, const std::string& name, double ml) {
    out << R"({"do":"pour","from":"specimen","to":")" << name << R"(","volume_ml":)" << near(ml) << "}\n";
  }
  void looked(std::ostream& out, const std::string& name, const std::string& test) {
    out << R"({"do":"look","vessel":")" << name << R"(","card":"black"})" << '\n';
    write(out, test, "");
  }
  void write(std::ostream& out, const std::string& test, const std::string& pad) {
    const bool two = pad == "nitrite";
    const std::string word = two ? pick({"negative", "positive"}) : pick({"negative", "trace", "1+", "2+"});
    out << R"({"do":"record","item":")" << test << R"(.grade","value":")" << word << "\"}\n";
  }
  /// As the program writes a log: every line with its time.
  static std::string with_times(const std::string& steps) {
    const auto events = sitting::parse_steps(steps, "steps");
    if (!events) {
      throw std::runtime_error(scenario::to_text(events.error()));
    }
    std::string text;
    for (const auto& event : *events) {
      text += sitting::to_line(event) + '\n';
    }
    return text;
  }

  std::mt19937_64 dice_;
  std::string head_;
};

} // namespace matula::bench_tests
