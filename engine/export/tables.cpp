#include "engine/export/tables.hpp"

#include "engine/export/csv.hpp"
#include "engine/records/review.hpp"
#include "engine/scoring/standards.hpp"

#include <ctime>
#include <fmt/format.h>

namespace matula::exports {

std::string moment_of(std::int64_t time_s) {
  const std::time_t time = time_s;
  std::tm parts{};
  gmtime_r(&time, &parts);
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", parts.tm_year + 1900, parts.tm_mon + 1,
                     parts.tm_mday, parts.tm_hour, parts.tm_min, parts.tm_sec);
}

std::string sittings_csv(const std::vector<records::SittingRow>& rows, For whom) {
  if (whom == For::Student) {
    Csv csv({"number", "student", "case", "title", "label", "received", "handed_in"});
    for (const auto& row : rows) {
      csv.row({std::to_string(row.number), row.pseudonym, row.exercise, row.title, row.label,
               moment_of(row.received_s), row.handed_in ? "yes" : "no"});
    }
    return csv.text();
  }
  Csv csv(
      {"number",          "student",      "case",           "title",           "label",   "received",
       "handed_in",       "readings",     "mean_per_mille", "skill_per_mille", "exact",   "within_one",
       "missed_findings", "false_alarms", "safety_stop",    "passed",          "why_not", "to_be_reviewed",
       "ledgers",         "rubric",       "program",        "scenario"});
  for (const auto& row : rows) {
    const auto& standing = row.standing;
    csv.row({std::to_string(row.number),
             row.pseudonym,
             row.exercise,
             row.title,
             row.label,
             moment_of(row.received_s),
             row.handed_in ? "yes" : "no",
             std::to_string(standing.readings),
             std::to_string(standing.mean),
             standing.skill ? std::to_string(*standing.skill) : "",
             std::to_string(standing.exact),
             std::to_string(standing.within_one),
             std::to_string(standing.missed_findings),
             std::to_string(standing.false_alarms),
             row.safety_stop ? "yes" : "no",
             standing.passed ? "yes" : "no",
             row.why_not,
             records::what_to_review(row.checks),
             row.ledgers,
             row.rubric.hash,
             row.rubric.program,
             row.scenario_name});
  }
  return csv.text();
}

std::string marks_csv(records::Store& store, const std::vector<records::SittingRow>& rows, For whom) {
  const bool all = whom == For::Teacher;
  std::vector<std::string> head{"number", "student", "case", "item", "label", "entered"};
  if (all) {
    head.insert(head.end(), {"expected", "ledger", "earned", "possible", "charged_to"});
  }
  Csv csv(head);
  for (const auto& row : rows) {
    for (const auto& mark : store.marks(row)) {
      const bool written = mark.ledger == scoring::Ledger::Reading ||
                           mark.ledger == scoring::Ledger::Interpretation ||
                           mark.ledger == scoring::Ledger::Arithmetic;
      if (!all && !written) {
        continue; // What a rule says of the work is a mark.
      }
      std::vector<std::string> cells{
          std::to_string(row.number), row.pseudonym, row.exercise, mark.item, mark.label, mark.entered};
      if (all) {
        cells.insert(cells.end(), {mark.expected, scoring::to_word(mark.ledger), std::to_string(mark.earned),
                                   std::to_string(mark.possible), mark.root});
      }
      csv.row(cells);
    }
  }
  return csv.text();
}

std::string items_csv(const judging::ClassView& view) {
  Csv csv({"case", "item", "label", "ledger", "students", "share_right", "correlation_with_rest",
           "most_written_wrong", "times", "look_at_it_because"});
  for (const auto& one : view.cases) {
    for (const auto& item : one.items) {
      csv.row({one.exercise, item.item, item.label, scoring::to_word(item.ledger),
               std::to_string(item.students), fmt::format("{:.4f}", item.right),
               item.with_rest ? fmt::format("{:.4f}", *item.with_rest) : "", item.favourite_wrong,
               std::to_string(item.favourite_times), item.behaved_badly});
    }
  }
  return csv.text();
}

std::string confusion_csv(const judging::ClassView& view) {
  Csv csv({"test", "shown", "written", "times"});
  for (const auto& test : view.tests) {
    for (std::size_t truth = 0; truth < test.words.size(); ++truth) {
      for (std::size_t read = 0; read < test.words.size(); ++read) {
        csv.row({test.test, test.words[truth], test.words[read],
                 fmt::format("{:.0f}", test.table.count(truth, read))});
      }
    }
  }
  return csv.text();
}

} // namespace matula::exports
