#include "engine/quality/exercise.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/strict/table.hpp"
#include "sim/matter/catalogue.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::quality {

namespace {

std::vector<std::string> control_keys(const std::vector<Control>& controls) {
  std::vector<std::string> keys;
  for (const Control& control : controls) {
    keys.push_back(control.key);
  }
  return keys;
}

std::vector<std::string> bottle_keys(const matter::Catalogue& catalogue) {
  std::vector<std::string> keys;
  for (const matter::Reagent& reagent : catalogue.reagents) {
    keys.push_back(reagent.key);
  }
  return keys;
}

std::vector<std::string> test_keys() {
  std::vector<std::string> keys;
  for (const procedure::Procedure& test : procedure::shipped_list()) {
    keys.push_back(test.key);
  }
  return keys;
}

Exercise read_exercise(const strict::Table& row, const std::vector<Control>& controls,
                       const matter::Catalogue& catalogue) {
  Exercise exercise;
  exercise.key = row.text("key");
  exercise.title = row.text("title");
  exercise.story = row.text("story");
  exercise.test = row.word("test", test_keys());
  exercise.bottle = row.word("bottle", bottle_keys(catalogue));
  exercise.controls = row.words("controls", control_keys(controls));
  exercise.days = row.integer("days", {10, 60, ""});
  exercise.bottle_days_per_day = row.number("bottle_days_per_day", {0.01, 100, "d"});
  exercise.reader_scatter = row.number("reader_scatter", {0.05, 1, "grades"});
  exercise.seed = row.integer("seed", {1, 1000000, ""});
  exercise.remedy = row.text("remedy");
  (void)row.text("source");
  return exercise;
}

std::string rule_list(const std::vector<Rule>& rules) {
  std::string words;
  for (const Rule rule : rules) {
    if (rejects(rule)) {
      words += (words.empty() ? "" : ", ") + to_word(rule) + " (" + meaning(rule) + ")";
    }
  }
  return words;
}

} // namespace

tl::expected<std::vector<Exercise>, scenario::Problems>
load_exercises(const std::filesystem::path& assets_folder, const std::vector<Control>& controls,
               const matter::Catalogue& catalogue) {
  strict::File file(assets_folder / "quality" / "exercises.toml");
  std::vector<Exercise> exercises;
  for (const strict::Table& row : file.root().tables("exercise")) {
    exercises.push_back(read_exercise(row, controls, catalogue));
  }
  scenario::Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return exercises;
}

Judged judge(const Exercise& exercise, const Series& series, const Answer& answer) {
  Judged judged;
  judged.day_right = answer.day == series.stop_day;
  if (series.stop_day == 0) {
    judged.rule_right = answer.day == 0;
    judged.words = answer.day == 0 ? "Right: no rule that rejects was broken."
                                   : "No rule that rejects was broken; a value beyond 2 s alone only warns.";
    return judged;
  }
  const std::vector<Rule>& broken = series.days[static_cast<std::size_t>(series.stop_day) - 1].broken;
  judged.rule_right =
      rejects(answer.rule) && std::find(broken.begin(), broken.end(), answer.rule) != broken.end();
  const std::string truth = fmt::format("On day {} the test had to stop: {}. {}", series.stop_day,
                                        rule_list(broken), exercise.remedy);
  if (judged.day_right) {
    judged.words = (judged.rule_right ? "Right. " : "The day is right, the rule is another. ") + truth;
  } else if (answer.day != 0 && answer.day < series.stop_day) {
    judged.words = "Too early: up to then no rule that rejects was broken. " + truth;
  } else {
    judged.words = "Too late: patients were reported with a test out of control. " + truth;
  }
  return judged;
}

} // namespace matula::quality
