#pragma once

#include <string>

namespace matula::test {

/// What differs between the small scenarios that tests and benchmarks write in words; the rest is one patient
/// whose urine holds a few salts.
struct ScenarioWords {
  std::string title;
  std::string level = "first";
  std::string seed = "7";
  std::string story = "A specimen for trying the program.";
  std::string debrief = "Protein.";
  std::string request = "Protein?";
  std::string volume = "60 mL";
  std::string dissolved; ///< Lines beside the salts: "albumin = ...".
  std::string reagents;  ///< With their quotation marks, as the two below.
  std::string tests;
  std::string decision; ///< The lines of one [[decision]].
};

inline constexpr const char* protein_decision = R"(key = "protein"
prompt = "Is protein present?"
right = "yes"
why = "The acid test was positive."
[decision.options]
yes = "Yes"
no = "No"
)";

inline std::string in_words(const ScenarioWords& of) {
  const auto text = [](const std::string& key, const std::string& value) {
    return key + " = \"" + value + "\"\n";
  };
  return text("title", of.title) + text("level", of.level) + "seed = " + of.seed + "\n" +
         text("story", of.story) + text("debrief", of.debrief) + R"toml(
[patient]
name = "Lina Oduya (invented)"
age_sex = "34 F"
ward = "Ward 2"
specimen_note = "Random, clean jar"
)toml" + text("request", of.request) +
         R"toml(
[specimen]
temperature = "22 C"
ph = 6.0
yellow = 0.2
)toml" + text("volume", of.volume) +
         R"toml(
[specimen.dissolved]
urea = "250 mmol/L"
sodium = "100 mmol/L"
potassium = "40 mmol/L"
phosphate = "15 mmol/L"
)toml" + of.dissolved +
         "\n[bench]\nroom = \"22 C\"\nreagents = [" + of.reagents + "]\n\n[asked]\ntests = [" + of.tests +
         "]\n\n[[decision]]\n" + of.decision;
}

} // namespace matula::test
