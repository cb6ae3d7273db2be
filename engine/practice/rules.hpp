#pragma once

#include "engine/practice/skill.hpp"
#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace matula::practice {

/// From the least to the most.
struct Reach {
  double low = 0;
  double high = 0;
};

/// How hard an unknown is; see the head of assets/practice/rules.toml.
struct DifficultyRules {
  double line_at = 0.08; ///< Grades or divisions.
  double least = 0.02;
  double float_per_20_mm = 0;
  double sum_one_step = 0;
  double sum_each_further = 0;
  double sum_below = 0;
  double sum_not_whole = 0;
  double delivery_qualify = 0;
  std::map<std::string, double> delivery; ///< By fault; "none" for one in order.
};

struct ChoiceRules {
  double chance_right = 0.75;
  int right_from = 950; ///< Per mille.
  int unlike_the_last = 12;
};

/// A kind of urine tubes are made from.
struct Urine {
  std::string key;
  std::string label;
  Reach absorbance; ///< Per cm at 420 nm.
};

/// A test that is practised.
struct Practised {
  std::string key;
  Skill skill = Skill::Turbidity;
  std::vector<Reach> reach; ///< Grades, rising: where the model makes tubes of it.

  /// The target, or what lies nearest to it among the tubes of that grade there are.
  [[nodiscard]] double within(std::size_t grade, double target) const;
};

struct FloatRules {
  double jar_ml = 40;
  double settles_s = 30;
  double lowest = 1.004;
  double highest = 1.036;
  Reach eye_mm;
  double full = 0.0006;
  double none = 0.003;
  std::map<std::string, Reach> temperature_c; ///< By trap.
};

struct SumRules {
  std::vector<double> calibrations_c;
  std::vector<double> zero_errors;
  std::vector<double> protein_g_dl;
  std::vector<double> glucose_g_dl;
  Reach readings;
  Reach degrees;
};

struct DeliveryRules {
  Reach age_min;
  Reach too_old_min;
  std::vector<std::string> patterns;
  double not_replaceable = 0;
  std::vector<std::string> other_names;
};

/// Everything practice goes by.
struct Rules {
  DifficultyRules difficulty;
  ChoiceRules choice;
  std::vector<Urine> urines;
  std::vector<Practised> tests;
  FloatRules floats;
  SumRules sums;
  DeliveryRules deliveries;

  [[nodiscard]] const Practised* find_test(std::string_view key) const;
  [[nodiscard]] const Urine* find_urine(std::string_view key) const;
  /// Keys of the tests of a skill; for a skill without tubes none.
  [[nodiscard]] std::vector<std::string> tests_of(Skill skill) const;
};

/// Reads assets/practice/rules.toml under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder);

} // namespace matula::practice
