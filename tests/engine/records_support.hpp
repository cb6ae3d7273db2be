#pragma once

#include "engine/assets/world.hpp"
#include "engine/records/import.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/event_json.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"

#include "scenario_words.hpp"

#include <catch2/catch.hpp>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace matula::test {

namespace fs = std::filesystem;

inline const assets::World& world() {
  static const auto read = assets::load(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return **read;
}

inline const scoring::Standards& standards() {
  static const auto read = scoring::load_standards(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

inline records::Marker& marker() {
  static records::Marker one(world(), standards(), assets::folder());
  return one;
}

/// A folder of this process's own, emptied at its end.
class Scratch {
public:
  explicit Scratch(const std::string& name)
      : path_(fs::temp_directory_path() / (name + "_" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    fs::create_directories(path_);
  }
  ~Scratch() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] fs::path operator/(const std::string& name) const { return path_ / name; }
  [[nodiscard]] const fs::path& path() const { return path_; }

private:
  fs::path path_;
};

inline std::string slurp(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

inline void spill(const fs::path& file, const std::string& text) {
  fs::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary) << text;
}

/// Albumin for the acid test: one tube, one decision; replayed in a few milliseconds.
inline const std::string tiny_scenario = in_words({.title = "Albumin for the acid test",
                                                   .dissolved = "albumin = \"130 mg/dL\"\n",
                                                   .reagents = R"("ssa_3", "acetic_acid_10")",
                                                   .tests = R"("ssa")",
                                                   .decision = protein_decision});

/// The log of a sitting at `scenario_text`, from lines of a steps file.
inline std::string log_of(const std::string& key, const std::string& scenario_text,
                          const std::string& steps) {
  const auto scenario = scenario::parse(scenario_text, key + ".toml", world().catalogue);
  if (!scenario) {
    FAIL(scenario::to_text(scenario.error()));
  }
  const auto events = sitting::parse_steps(steps, "steps");
  if (!events) {
    FAIL(scenario::to_text(events.error()));
  }
  std::string text = sitting::to_line(sitting::header_for(*scenario)) + '\n';
  for (const auto& event : *events) {
    text += sitting::to_line(event) + '\n';
  }
  return text;
}

/// The acid test at the tiny scenario: what was written for the tube and the question, and how long the tube
/// stood.
inline std::string tiny_log(const std::string& grade, const std::string& answer, int waited_s = 595,
                            bool handed_in = true) {
  std::string steps = R"({"do": "protect", "gloves": true, "goggles": true}
{"do": "mix", "vessel": "specimen", "seconds": 5}
{"do": "pour", "from": "specimen", "to": "tube-4", "volume_ml": 3}
{"do": "dispense", "reagent": "ssa_3", "to": "tube-4", "volume_ml": 3}
{"do": "mix", "vessel": "tube-4", "manner": "invert", "seconds": 5}
{"do": "wait", "seconds": )" +
                      std::to_string(waited_s) + R"(}
{"do": "look", "vessel": "tube-4", "card": "black"}
{"do": "record", "item": "ssa.grade", "value": ")" +
                      grade + R"("}
)";
  if (handed_in) {
    steps +=
        R"({"do": "record", "item": "decision.protein", "value": ")" + answer + "\"}\n{\"do\": \"finish\"}\n";
  }
  return log_of("tiny", tiny_scenario, steps);
}

inline records::Incoming tiny_incoming(const std::string& pseudonym, const std::string& log) {
  records::Incoming in;
  in.pseudonym = pseudonym;
  in.exercise = "tiny";
  in.scenario_text = tiny_scenario;
  in.scenario_file = "tiny.toml";
  in.log_text = log;
  in.came_from = pseudonym;
  return in;
}

inline records::Marked marked(const records::Incoming& in) {
  auto made = marker().mark(in);
  if (!made) {
    FAIL(made.error());
  }
  return *made;
}

/// Everything a store holds of its sittings, as text, the times left out.
inline std::string dump(records::Store& store) {
  std::ostringstream out;
  for (const auto& row : store.sittings({}, true)) {
    out << row.number << '|' << row.pseudonym << '|' << row.exercise << '|' << row.label << '|'
        << row.handed_in << '|' << row.continued_in << '|' << row.standing.mean << '|' << row.standing.passed
        << '|' << row.why_not << '|' << row.ledgers << '\n';
    for (const auto& mark : store.marks(row)) {
      out << "  " << mark.item << ' ' << mark.label << ' ' << mark.earned << '/' << mark.possible << ' '
          << mark.root << ' ' << mark.entered << ' ' << mark.expected << '\n';
    }
    for (const auto& reading : store.readings(row)) {
      out << "  " << reading.item << ' ' << reading.truth << ' ' << (reading.read ? *reading.read : -1) << ' '
          << reading.intensity << ' ' << reading.per_mille << '\n';
    }
    out << store.original(row.number).log_text;
  }
  return out.str();
}

} // namespace matula::test
