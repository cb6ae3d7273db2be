#pragma once

#include "engine/reception/shown.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace matula::scenario {

struct Scenario;

/// A question about what the findings mean, without its answer.
struct Question {
  std::string key;
  std::string prompt;
  std::vector<std::pair<std::string, std::string>> options; ///< Key and wording.
};

/// One line of a test that is read off a curve of standards.
struct AskedLine {
  std::string item;
  std::string words;
  bool is_reading = false;        ///< Read on the instrument; else worked out.
  bool is_net = false;            ///< The specimen less its blank: what the curve is entered with.
  std::optional<double> standard; ///< What the standard holds, for a standard.
};

/// A test the form asks for, as the worksheet shows it.
struct AskedTest {
  std::string title;              ///< "Heat and acetic acid"
  std::string request;            ///< "Protein by heat and acetic acid"
  std::string item;               ///< "heat.grade"
  std::vector<std::string> words; ///< Lowest first; empty for a figure.
  std::string unit;               ///< Of a figure.
  std::string example;            ///< Of a figure.
  std::vector<AskedLine> curve;   ///< Its lines, in order, when it is read off a curve; else empty.
};

/// What a learner may know of a case before the marks: the form, the shelf, the laboratory's rules and the
/// questions. No word of the specimen's composition.
struct Brief {
  std::string key;
  std::string title;
  std::string level;
  std::string story;
  std::string patient; ///< Name, age and ward in one line.
  std::string request;
  std::string specimen_note;
  std::optional<reception::Shown>
      reception; ///< What lies on the counter; nothing when it is not asked about.
  std::vector<std::string> reagents_out;
  double calibration_c = 15;
  double per_degrees_c = 3;
  double protein_per_g_dl = 0.003;
  double glucose_per_g_dl = 0.004;
  bool asks_look = false;
  bool asks_gravity = false;
  std::vector<AskedTest> tests;
  std::vector<Question> questions;
};

[[nodiscard]] Brief brief_of(const Scenario& scenario);

} // namespace matula::scenario
