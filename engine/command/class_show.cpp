#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/judging/view_json.hpp"
#include "engine/judging/words.hpp"
#include "engine/records/review.hpp"
#include "engine/records/trouble.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <ostream>

namespace matula::command {
namespace {

constexpr double percent = 100;

void print_test(const judging::TestAgreement& test, std::ostream& out) {
  fmt::print(out, "\n{}: {} readings by {} students\n", test.title, test.readings, test.students);
  if (test.plain) {
    fmt::print(out,
               "  {:.0f} % exact, {:.0f} % within one; bias {:+.2f} (standard error {:.2f}) grades; {} "
               "findings missed, {} false alarms\n",
               percent * test.plain->exact, percent * test.plain->within_one, test.plain->bias,
               test.plain->bias_se, test.missed_findings, test.false_alarms);
  }
  fmt::print(out, "  weighted kappa, linear {}, quadratic {}; AC2, linear {}\n",
             judging::in_words(test.kappa_linear), judging::in_words(test.kappa_quadratic),
             judging::in_words(test.gwet_linear));
  std::size_t widest = 6;
  for (const auto& word : test.words) {
    widest = std::max(widest, word.size());
  }
  fmt::print(out, "  {:>{}} |", "shown", widest);
  for (const auto& word : test.words) {
    fmt::print(out, " {:>{}}", word, widest);
  }
  out << "   (columns: written)\n";
  for (std::size_t i = 0; i < test.words.size(); ++i) {
    fmt::print(out, "  {:>{}} |", test.words[i], widest);
    for (std::size_t j = 0; j < test.words.size(); ++j) {
      fmt::print(out, " {:>{}.0f}", test.table.count(i, j), widest);
    }
    out << '\n';
  }
}

void print_lines(const judging::ClassView& view, std::ostream& out) {
  for (const auto& group : view.lines) {
    fmt::print(out, "\n{}: {} readings{}\n", group.title, group.readings,
               group.shift ? fmt::format(", shift {:+.2f} grades, unsteadiness {:.2f}", group.shift->value,
                                         group.spread)
                           : std::string(", too few to tell"));
    for (const auto& line : group.lines) {
      fmt::print(out, "  {} | {}: {:.2f} ({:.2f} to {:.2f}), reference {:.1f}{}\n", line.below, line.above,
                 line.own.value, line.own.low, line.own.high, line.reference,
                 line.sentence.empty() ? "" : "  *");
    }
  }
  for (const auto& swap : view.swaps) {
    if (!swap.sentence.empty()) {
      fmt::print(out,
                 "  {} and {} are taken for each other: {} of {} tubes, where unsteadiness explains {:.0f}\n",
                 swap.one, swap.other, swap.swapped, swap.tubes, swap.explained);
    }
  }
}

void print_cases(const judging::ClassView& view, std::ostream& out) {
  for (const auto& one : view.cases) {
    fmt::print(out, "\n{}: {} students{}\n", one.exercise, one.students,
               one.kr20 ? fmt::format("; KR-20 {:.2f}, standard error {:.1f} items", *one.kr20,
                                      one.error.value_or(0))
                        : std::string("; too few for KR-20"));
    for (const auto& item : one.items) {
      if (!item.behaved_badly.empty()) {
        fmt::print(out, "  {}: {}\n", item.label, item.behaved_badly);
      }
    }
  }
}

void print_students(const judging::ClassView& view, const std::map<std::string, std::string>& names,
                    std::ostream& out) {
  out << "\nStudents\n";
  for (const auto& student : view.students) {
    const auto name = names.find(student.sum.pseudonym);
    fmt::print(out, "  {:<18} {}{} of {} passed, mean {}, {} of {} exact, {} missed{}\n",
               student.sum.pseudonym, name == names.end() ? "" : name->second + ": ", student.sum.passed,
               student.sum.sittings, student.mean, student.sum.exact, student.sum.readings,
               student.sum.missed,
               student.sum.stops > 0 ? fmt::format(", stopped {} times", student.sum.stops) : std::string());
    for (const auto& group : student.lines) {
      for (const auto& line : group.lines) {
        fmt::print(out, "{}", line.sentence.empty() ? "" : "      " + line.sentence + "\n");
      }
    }
  }
}

void print_standard(const judging::StandardView& s, std::ostream& out) {
  fmt::print(out,
             "\nThe standard: {} of {} passed at {} per mille; {} more would have by the mean of their "
             "readings but missed a finding, {} were stopped for safety; {} lie close to the mark\n",
             s.passed, s.sittings, s.mark, s.failed_by_findings, s.failed_by_safety, s.borderline);
  for (const auto& step : s.steps) {
    fmt::print(out, "  mark {:>4}: {:>3.0f} % would pass, {:>3.0f} % by the mean alone\n", step.mark,
               percent * step.passed, percent * step.by_mean);
  }
}

/// Before any figure: sittings whose sealed result did not hold what it should.
void print_reviews(const std::vector<records::ToReview>& all, std::ostream& out) {
  constexpr std::size_t most = 20; // A screen's worth; the list has all of them.
  if (all.empty()) {
    return;
  }
  fmt::print(out, "\nTo be reviewed before their marks stand (they count in everything below): {}\n",
             all.size());
  for (std::size_t i = 0; i < std::min(most, all.size()); ++i) {
    fmt::print(out, "  {:>5}  {}, {}\n", all[i].number, all[i].pseudonym, all[i].exercise);
    for (const auto& words : all[i].why) {
      fmt::print(out, "         {}\n", words);
    }
  }
  if (all.size() > most) {
    fmt::print(out, "  and {} more: matula class list\n", all.size() - most);
  }
}

} // namespace

int run_class_show(const ClassShow& asked, std::ostream& out, std::ostream& err) {
  const auto basis = judging::load_basis(assets::folder());
  if (!basis) {
    err << scenario::to_text(basis.error()) << '\n';
    return exit_bad_input;
  }
  records::Store store(asked.store);
  const auto view = judging::judge(store, scope_of(asked), *basis);
  if (asked.json) {
    out << judging::to_json(view) << '\n';
    return exit_good;
  }
  fmt::print(out, "{} sittings, {} graded readings, {} students\n", view.sittings, view.readings,
             view.students.size());
  print_reviews(records::to_review(store, scope_of(asked)), out);
  print_standard(view.standard, out);
  for (const auto& test : view.tests) {
    print_test(test, out);
  }
  print_lines(view, out);
  out << "\nWhat it was lost by\n";
  for (const auto& fault : view.faults) {
    fmt::print(out, "  {:>5} {:<5}, {:>4} {:<8}: {}\n", fault.lost, fault.lost == 1 ? "mark" : "marks",
               fault.students, fault.students == 1 ? "student" : "students", fault.label);
  }
  if (view.cases_left_out) {
    out << "\nItems are shown of one case at a time in so large a store: add --case NAME, or export items.\n";
  }
  print_cases(view, out);
  print_students(view, store.names(), out);
  return exit_good;
}

} // namespace matula::command
