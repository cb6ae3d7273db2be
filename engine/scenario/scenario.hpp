#pragma once

#include "engine/reception/delivery.hpp"
#include "engine/scenario/problem.hpp"
#include "sim/specimen/specimen.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::matter {
struct Catalogue;
}

namespace matula::scenario {

/// A question with fixed answers about what the findings mean.
struct Decision {
  std::string key;
  std::string prompt;
  std::vector<std::pair<std::string, std::string>> options; ///< Key and wording.
  std::string right;                                        ///< Key of the right option.
  std::string why;                                          ///< Shown with the marks.
  int weight = 10;
};

/// Which rules of arithmetic the laboratory of the case has written down.
struct LaboratoryRules {
  double calibration_c = 15;
  double per_degrees_c = 3; ///< 0.001 for every so many degrees.
  double protein_per_g_dl = 0.003;
  double glucose_per_g_dl = 0.004;
};

struct Patient {
  std::string name;
  std::string age_sex;
  std::string ward;
  std::string request;       ///< The doctor's words.
  std::string specimen_note; ///< Kind, time and container, as on the form.
};

/// What the learner is asked to do and record.
struct Asked {
  bool look = false; ///< Colour, clarity, odour.
  bool specific_gravity = false;
  std::vector<std::string> procedures; ///< Keys, in the order of the worksheet.

  [[nodiscard]] bool has(std::string_view procedure) const;
};

/// What a case marks otherwise than assets/scoring/rules.toml; nothing set is as there.
struct MarkingRules {
  std::vector<int> loss; ///< Per mille by distance in grades, from 0 on; empty, or for every distance.
  std::optional<int> missed_finding;
  std::optional<int> false_alarm;
  std::optional<double> reader_spread;
  std::optional<int> pass_mark; ///< Per mille.
  std::optional<int> missed_findings;
};

struct Marking {
  MarkingRules rules;
  int grade_weight = 20; ///< Each graded test.
  int look_weight = 5;   ///< Each of colour, clarity and odour.
  int gravity_weight = 20;
  int process_weight = 20;
  double gravity_full = 0.001; ///< Full marks within.
  double gravity_none = 0.003; ///< No marks from.
  double temperature_full_c = 1.0;
  double temperature_none_c = 3.0;
};

struct Scenario {
  std::string key; ///< File name without its ending.
  std::string title;
  std::string level; ///< "newcomer", "first", "trap", "exam"
  std::string story;
  Patient patient;
  specimen::Specimen specimen;
  std::optional<reception::Delivery>
      collection; ///< How it came over the counter; asked about when it is there.
  double room_c = 22;
  double urinometer_zero_error = 0;
  double refractometer_zero_error = 0; ///< What distilled water reads on it, less 1.000.
  std::vector<std::string> reagents_out;
  std::map<std::string, double> bottle_age_days; ///< Since opening, by reagent key; others are fresh.
  LaboratoryRules rules;
  Asked asked;
  std::vector<Decision> decisions;
  Marking marking;
  std::uint64_t seed = 1;
  std::string file;         ///< As it was given to `load`.
  std::string content_hash; ///< Of the file's text, 16 hexadecimal digits.
  std::string bench_hash;   ///< The same of its bench half (halves.hpp), at which examinations are sat.
  std::string debrief;      ///< What a competent reader should have come to, shown after the marks.
};

/// The hash a scenario of this text has, without reading it.
[[nodiscard]] std::string text_hash(std::string_view text);

/// Reads and checks one scenario file. Every problem is reported, not only the first.
[[nodiscard]] tl::expected<Scenario, Problems> load(const std::filesystem::path& file,
                                                    const matter::Catalogue& catalogue);
[[nodiscard]] tl::expected<Scenario, Problems> parse(std::string_view text, const std::string& file_name,
                                                     const matter::Catalogue& catalogue);

/// Reads the half of a scenario that a bench needs: no title, level, debrief, answers or marking rules may
/// stand in it. What marks are made of is left as a new Scenario has it.
[[nodiscard]] tl::expected<Scenario, Problems>
parse_bench_half(std::string_view text, const std::string& file_name, const matter::Catalogue& catalogue);

} // namespace matula::scenario
