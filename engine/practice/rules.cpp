#include "engine/practice/rules.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>
#include <cmath>

namespace matula::practice {

namespace {

using strict::Range;
using strict::Table;

const Range logits{-4, 4, ""};

Reach read_reach(const Table& table, const std::string& key, const Range& range) {
  const auto ends = table.numbers(key, range, 2);
  if (ends.size() != 2 || ends[0] > ends[1]) {
    if (ends.size() == 2) {
      table.complain(key, "the smaller number first");
    }
    return {range.low, range.high};
  }
  return {ends[0], ends[1]};
}

DifficultyRules read_difficulty(const Table& root) {
  DifficultyRules rules;
  const Table table = root.table("difficulty");
  rules.line_at = table.number("line_at", {0.001, 1, "grades"});
  rules.least = table.number("least", {0.001, 0.5, "grades"});
  (void)table.text("source");
  const Table floats = table.table("float");
  rules.float_per_20_mm = floats.number("per_20_mm", logits);
  (void)floats.text("source");
  const Table sum = table.table("sum");
  rules.sum_one_step = sum.number("one_step", logits);
  rules.sum_each_further = sum.number("each_further", logits);
  rules.sum_below = sum.number("below", logits);
  rules.sum_not_whole = sum.number("not_whole", logits);
  (void)sum.text("source");
  const Table delivery = table.table("delivery");
  rules.delivery_qualify = delivery.number("qualify", logits);
  (void)delivery.text("source");
  const Table faults = delivery.table("fault");
  for (const std::string& key : faults.keys()) {
    rules.delivery[key] = faults.number(key, logits);
  }
  if (rules.delivery.count("none") == 0) {
    faults.complain("none", "how hard a delivery in order is, -4 to 4");
  }
  return rules;
}

ChoiceRules read_choice(const Table& root) {
  const Table table = root.table("choice");
  ChoiceRules rules;
  rules.chance_right = table.number("chance_right", {0.05, 0.95, ""});
  rules.right_from = table.integer("right_from", {1, 1000, "per mille"});
  rules.unlike_the_last = table.integer("unlike_the_last", {1, 1000, ""});
  (void)table.text("source");
  return rules;
}

std::vector<Urine> read_urines(const Table& root) {
  std::vector<Urine> urines;
  for (const Table& row : root.tables("urine")) {
    urines.push_back({row.text("key"), row.text("label"), read_reach(row, "absorbance", {0, 3, "per cm"})});
    (void)row.text("source");
  }
  return urines;
}

std::vector<std::string> skill_words() {
  std::vector<std::string> words;
  for (const Skill skill : all_skills) {
    if (has_tubes(skill)) {
      words.push_back(to_word(skill));
    }
  }
  return words;
}

/// [from, to, from, to ...], rising.
std::vector<Reach> read_reaches(const Table& row) {
  const auto ends = row.numbers("reach", {0, 6, "grades"});
  std::vector<Reach> spans;
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
    spans.push_back({ends[i], ends[i + 1]});
  }
  if (ends.empty() || ends.size() % 2 != 0 || !std::is_sorted(ends.begin(), ends.end())) {
    row.complain("reach", "pairs of grades, rising: [0.1, 3.5, 4, 4.7]");
    return {{0, 1}};
  }
  return spans;
}

std::vector<Practised> read_tests(const Table& root) {
  std::vector<std::string> keys;
  for (const auto& test : procedure::shipped_list()) {
    keys.push_back(test.key);
  }
  std::vector<Practised> tests;
  for (const Table& row : root.tables("test")) {
    Practised test;
    test.key = row.word("key", keys);
    test.skill = *skill_from_word(row.word("skill", skill_words()));
    test.reach = read_reaches(row);
    tests.push_back(std::move(test));
  }
  return tests;
}

FloatRules read_float(const Table& root) {
  const Table table = root.table("float");
  FloatRules rules;
  rules.jar_ml = table.number("jar_ml", {15, 55, "mL"});
  rules.settles_s = table.number("settles_s", {5, 600, "s"});
  rules.lowest = table.number("lowest", {1, 1.06, ""});
  rules.highest = table.number("highest", {1, 1.06, ""});
  rules.eye_mm = read_reach(table, "eye_mm", {0, 40, "mm"});
  rules.full = table.number("full", {0.0001, 0.01, ""});
  rules.none = table.number("none", {0.0001, 0.02, ""});
  (void)table.text("source");
  for (const Table& row : table.tables("water")) {
    rules.temperature_c[row.text("key")] = read_reach(row, "temperature_c", {1, 45, "°C"});
  }
  return rules;
}

SumRules read_sum(const Table& root) {
  const Table table = root.table("sum");
  SumRules rules;
  rules.calibrations_c = table.numbers("calibrations_c", {4, 30, "°C"});
  rules.zero_errors = table.numbers("zero_errors", {-0.005, 0.005, ""});
  rules.protein_g_dl = table.numbers("protein_g_dl", {0.1, 10, "g/dL"});
  rules.glucose_g_dl = table.numbers("glucose_g_dl", {0.1, 10, "g/dL"});
  rules.readings = read_reach(table, "readings", {1, 1.06, ""});
  rules.degrees = read_reach(table, "degrees", {1, 30, "°C"});
  (void)table.text("source");
  return rules;
}

DeliveryRules read_delivery(const Table& root) {
  const Table table = root.table("delivery");
  DeliveryRules rules;
  rules.age_min = read_reach(table, "age_min", {0, 120, "min"});
  rules.too_old_min = read_reach(table, "too_old_min", {121, 1440, "min"});
  rules.patterns = table.texts_or_none("patterns");
  rules.not_replaceable = table.number("not_replaceable", {0, 1, ""});
  rules.other_names = table.texts_or_none("other_names");
  for (const char* list : {"patterns", "other_names"}) {
    if ((list == std::string("patterns") ? rules.patterns : rules.other_names).empty()) {
      table.complain(list, "at least one");
    }
  }
  (void)table.text("source");
  return rules;
}

} // namespace

double Practised::within(std::size_t grade, double target) const {
  constexpr double half = 0.5;
  const double middle = static_cast<double>(grade);
  double best = target;
  double best_off = -1;
  for (const Reach& span : reach) {
    const double low = std::max(span.low, middle - half);
    const double high = std::min(span.high, middle + half);
    if (low > high) {
      continue;
    }
    const double nearest = std::clamp(target, low, high);
    if (best_off < 0 || std::abs(nearest - target) < best_off) {
      best_off = std::abs(nearest - target);
      best = nearest;
    }
  }
  return best;
}

const Practised* Rules::find_test(std::string_view key) const {
  const auto found =
      std::find_if(tests.begin(), tests.end(), [&](const auto& test) { return test.key == key; });
  return found == tests.end() ? nullptr : &*found;
}

const Urine* Rules::find_urine(std::string_view key) const {
  const auto found =
      std::find_if(urines.begin(), urines.end(), [&](const auto& urine) { return urine.key == key; });
  return found == urines.end() ? nullptr : &*found;
}

std::vector<std::string> Rules::tests_of(Skill skill) const {
  std::vector<std::string> keys;
  for (const Practised& test : tests) {
    if (test.skill == skill) {
      keys.push_back(test.key);
    }
  }
  return keys;
}

tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "practice" / "rules.toml");
  const Table root = file.root();
  Rules rules{read_difficulty(root), read_choice(root), read_urines(root),  read_tests(root),
              read_float(root),      read_sum(root),    read_delivery(root)};
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return rules;
}

} // namespace matula::practice
