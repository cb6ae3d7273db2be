#include "engine/attribution/explanation_json.hpp"
#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/report.hpp"
#include "engine/records/review.hpp"
#include "engine/records/trouble.hpp"
#include "engine/scoring/standards.hpp"

#include <filesystem>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <fstream>
#include <nlohmann/json.hpp>
#include <ostream>

namespace matula::command {
namespace {

nlohmann::json to_json(const records::SittingRow& row) {
  const auto& standing = row.standing;
  return {{"number", row.number},
          {"student", row.pseudonym},
          {"case", row.exercise},
          {"title", row.title},
          {"label", row.label},
          {"received_s", row.received_s},
          {"keep_until", row.keep_until},
          {"handed_in", row.handed_in},
          {"continued_in", row.continued_in},
          {"checks",
           row.checks.empty() ? nlohmann::json(nullptr) : nlohmann::json::parse(row.checks, nullptr, false)},
          {"to_be_reviewed", !records::what_to_review(row.checks).empty()},
          {"rubric", row.rubric.hash},
          {"world", row.rubric.world},
          {"program", row.rubric.program},
          {"scenario", row.scenario_name},
          {"mean", standing.mean},
          {"skill", standing.skill ? nlohmann::json(*standing.skill) : nlohmann::json(nullptr)},
          {"readings", standing.readings},
          {"exact", standing.exact},
          {"missed_findings", standing.missed_findings},
          {"safety_stop", row.safety_stop},
          {"passed", standing.passed},
          {"why_not", row.why_not},
          {"ledgers", row.ledgers}};
}

void put(const std::filesystem::path& file, const std::string& text) {
  std::ofstream stream(file, std::ios::binary);
  stream << text;
  stream.close();
  if (!stream) {
    throw records::Trouble(file.string() + " could not be written.");
  }
}

/// Whose sitting it is, and what was found when its sealed result was opened.
void print_head(long long number, const records::Incoming& original, const std::string& title,
                std::ostream& out) {
  fmt::print(out, "{}\nSitting {} by {}{}\n", title, number, original.pseudonym,
             original.label.empty() ? "" : ", " + original.label);
  for (const auto& one : records::checks_of(original.checks)) {
    if (one.state != "good") {
      fmt::print(out, "{}: {}: {}\n", one.state, one.what, one.words);
    }
  }
}

} // namespace

int run_class_list(const ClassList& asked, std::ostream& out, std::ostream& /*err*/) {
  records::Store store(asked.store);
  const auto rows = store.sittings(scope_of(asked), asked.all_scores);
  if (asked.json) {
    nlohmann::json all = nlohmann::json::array();
    for (const auto& row : rows) {
      all.push_back(to_json(row));
    }
    out << all.dump(1, ' ', false, nlohmann::json::error_handler_t::replace) << '\n';
    return exit_good;
  }
  std::size_t to_review = 0;
  for (const auto& row : rows) {
    const std::string review = records::what_to_review(row.checks);
    to_review += review.empty() ? 0 : 1;
    fmt::print(out, "{:>5}  {}  {:<16} {:<24} {}  readings {} of 1000; {}{}{}\n", row.number,
               day_of(row.received_s), row.pseudonym, row.exercise,
               row.standing.passed ? "passed    " : "not passed", row.standing.mean, row.ledgers,
               row.continued_in != 0 ? fmt::format(" (goes on in {})", row.continued_in) : std::string(),
               review.empty() ? "" : "; to be reviewed: " + review);
  }
  fmt::print(out, "{} {}{}\n", rows.size(), asked.all_scores ? "scores" : "sittings",
             to_review == 0 ? "" : fmt::format(", {} to be reviewed", to_review));
  return exit_good;
}

int run_class_sitting(const ClassSitting& asked, std::ostream& out, std::ostream& err) {
  records::Store store(asked.store);
  const auto original = store.original(asked.number);
  if (!asked.output.empty()) {
    std::error_code ignored;
    std::filesystem::create_directories(asked.output, ignored);
    const auto folder = std::filesystem::path(asked.output);
    // By the name the log knows it under: an examination's cases are numbered there.
    const auto known = sitting::parse_log(original.log_text, original.came_from);
    put(folder / (known ? known->header.scenario_key + ".toml" : original.scenario_file),
        original.scenario_text);
    put(folder / fmt::format("{}-{}.jsonl", original.exercise, asked.number), original.log_text);
    fmt::print(out, "{}\n", (folder / fmt::format("{}-{}.jsonl", original.exercise, asked.number)).string());
    return exit_good;
  }
  auto room = open_marking_room();
  const auto marked = room.marker->mark(original);
  if (!marked) {
    err << marked.error() << '\n';
    return exit_bad_input;
  }
  const auto scenario =
      scenario::parse(original.scenario_text, original.scenario_file, room.ground.world->catalogue);
  const auto log = sitting::parse_log(original.log_text, original.came_from);
  const auto why =
      attribution::explain(*room.ground.world, room.ground.standards, *scenario, log->events, marked->report);
  if (asked.json) {
    out << attribution::marks_text(marked->report, why, scenario->key, false);
  } else {
    print_head(asked.number, original, scenario->title, out);
    print_report(marked->report, why, out);
  }
  return exit_good;
}

} // namespace matula::command
