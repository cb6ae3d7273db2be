#include "engine/author/advice.hpp"
#include "engine/author/golden.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/hand_written.hpp"
#include "engine/command/study.hpp"
#include "engine/command/verbs.hpp"
#include "engine/scenario/scenario.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

/// What was found of one file.
struct Checked {
  std::string file;
  std::string title;
  scenario::Problems problems;
  std::vector<std::string> differences; ///< From its worked sittings.
  std::vector<author::Advice> advice;

  [[nodiscard]] bool good() const { return problems.empty() && differences.empty(); }
};

Checked check(const std::string& file, const author::Shelf& shelf, bool quick) {
  Checked checked;
  checked.file = file;
  if (std::error_code ignored; std::filesystem::is_directory(file, ignored)) {
    checked.problems = {{file, 0, 0, "", "a folder", "scenario files, such as " + file + "/*.toml"}};
    return checked;
  }
  const auto read = read_hand_written(file, shelf.world->catalogue);
  if (!read) {
    checked.problems = read.error();
    return checked;
  }
  const scenario::Scenario& scenario = read->scenario;
  checked.title = scenario.title;
  if (!quick) {
    const auto review = scenario::review_of(read->text);
    checked.differences =
        review ? author::differs_from_worked(shelf, scenario, *review) : std::vector<std::string>{};
    checked.advice = author::advise(shelf, scenario, author::preview(shelf, scenario), review);
  }
  return checked;
}

void print(const Checked& checked, std::ostream& out, std::ostream& err) {
  if (!checked.problems.empty()) {
    err << scenario::to_text(checked.problems) << '\n';
    return;
  }
  for (const auto& words : checked.differences) {
    err << checked.file << ": " << words << '\n';
  }
  if (checked.good()) {
    out << checked.file << ": good: " << checked.title << '\n';
  }
  for (const auto& advice : checked.advice) {
    out << checked.file << ": advice (" << advice.kind << "): " << advice.words << '\n';
  }
}

nlohmann::json to_json(const Checked& checked) {
  auto problems = nlohmann::json::array();
  for (const auto& one : checked.problems) {
    problems.push_back(
        {{"line", one.line}, {"column", one.column}, {"found", one.found}, {"expected", one.expected}});
  }
  auto advice = nlohmann::json::array();
  for (const auto& one : checked.advice) {
    advice.push_back({{"kind", one.kind}, {"words", one.words}});
  }
  return {{"file", checked.file},
          {"title", checked.title},
          {"good", checked.good()},
          {"problems", problems},
          {"differences", checked.differences},
          {"advice", advice}};
}

} // namespace

int run_check(const Check& asked, std::ostream& out, std::ostream& err) {
  const auto study = load_study();
  if (!study) {
    err << scenario::to_text(study.error()) << '\n';
    return exit_bad_input;
  }
  int code = exit_good;
  auto all = nlohmann::json::array();
  for (const auto& file : asked.files) {
    const auto checked = check(file, *study->shelf, asked.quick);
    code = checked.good() ? code : exit_bad_input;
    if (asked.json) {
      all.push_back(to_json(checked));
    } else {
      print(checked, out, err);
    }
  }
  if (asked.json) {
    out << all.dump(2) << '\n';
  }
  return code;
}

} // namespace matula::command
