#pragma once

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"

#include <string>

namespace matula::tests {

inline const matter::Catalogue& catalogue() {
  static const matter::Catalogue read = [] {
    scenario::Problems problems;
    return assets::load_catalogue(assets::folder(), problems);
  }();
  return read;
}

/// A scenario without a fault, to spoil in one place.
inline std::string good_scenario() {
  return R"(title = "T"
level = "first"
seed = 7
story = "S"
debrief = "D"
[patient]
name = "N"
age_sex = "30, male"
ward = "W"
request = "R"
specimen_note = "P"
[specimen]
volume = "60 mL"
temperature = "22 C"
ph = 6.0
yellow = 0.2
[specimen.dissolved]
urea = "280 mmol/L"
albumin = "150 mg/dL"
glucose = "1.5 g/dL"
[bench]
room = "22 C"
reagents = ["acetic_acid_10", "ssa_3", "benedict"]
[asked]
tests = ["heat", "ssa", "benedict"]
[[decision]]
key = "meaning"
prompt = "What?"
right = "a"
why = "Because."
[decision.options]
a = "A"
b = "B"
)";
}

inline std::string with(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  return at == std::string::npos ? "the test's own text lacks: " + from : text.replace(at, from.size(), to);
}

} // namespace matula::tests
