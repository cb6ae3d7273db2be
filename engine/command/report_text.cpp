#include "engine/command/report.hpp"

#include "engine/scoring/standards.hpp"

#include <fmt/format.h>

#include <ostream>

namespace matula::command {
namespace {

void print_mark(const scoring::Mark& mark, std::ostream& out) {
  out << fmt::format("  {:>3} of {:<3} {}\n", mark.earned, mark.possible, mark.label);
  if (!mark.reason.empty()) {
    out << "             " << mark.reason << '\n';
  }
}

} // namespace

void print_report(const scoring::Report& report, const std::vector<attribution::Explanation>& why,
                  std::ostream& out) {
  for (const auto ledger : scoring::all_ledgers) {
    if (report.possible(ledger) == 0) {
      continue;
    }
    out << fmt::format("\n{}: {} of {}\n", scoring::to_word(ledger), report.earned(ledger),
                       report.possible(ledger));
    for (const auto& mark : report.marks) {
      if (mark.ledger == ledger) {
        print_mark(mark, out);
      }
    }
  }
  out << '\n';
  for (const auto& line : scoring::say(report.standing)) {
    out << line << '\n';
  }
  for (const auto& loss : report.losses) {
    out << fmt::format("  {:>3} lost through: {}\n", loss.lost, loss.words);
  }
  for (const auto& finding : report.findings) {
    out << fmt::format("  {}: {}\n", finding.label, finding.words);
  }
  for (const auto& tube : report.tubes) {
    out << fmt::format("\n{} by the book: {}; yours: {}", tube.title, tube.reference_word,
                       tube.learner_vessel.empty() ? "not done" : tube.learner_tube_word);
  }
  bool first = true;
  for (const auto& reading : why) {
    if (!reading.words.empty()) {
      out << (first ? "\n\nWhy:\n  " : "\n  ") << reading.title << ": " << reading.words;
      first = false;
    }
  }
  if (report.safety_stop) {
    out << "\n\nSAFETY STOP: a person could have been hurt. The sitting is failed whatever else was earned.";
  }
  if (!report.debrief.empty()) {
    out << "\n\n" << report.debrief;
  }
  out << '\n';
}

void print_seen(const std::vector<SeenThing>& things, std::ostream& out) {
  for (const auto& thing : things) {
    out << fmt::format("{}: {}{}\n", thing.name, thing.colour_hex.empty() ? "" : thing.colour_hex + ", ",
                       thing.words);
  }
}

} // namespace matula::command
