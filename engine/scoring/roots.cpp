#include "engine/scoring/roots.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <string_view>

namespace matula::scoring {
namespace {

constexpr int nearly_full = 950; // As for a tube near a line: this good is right.

bool lost(const Mark& mark) {
  return mark.earned < mark.possible;
}

bool starts(const std::string& text, const std::string& start) {
  return text.compare(0, start.size(), start) == 0;
}

/// "heat" of "heat.grade"; "gravity" of "sg.reading".
std::string part_of(const std::string& item) {
  const std::string first = item.substr(0, item.find('.'));
  return first == "sg" ? "gravity" : first;
}

const Mark* find(const std::vector<Mark>& marks, const std::string& item) {
  const auto found = std::find_if(marks.begin(), marks.end(), [&](const Mark& m) { return m.item == item; });
  return found == marks.end() ? nullptr : &*found;
}

/// The costliest broken rule of a test's procedure.
const Mark* worst_fault(const std::vector<Mark>& marks, const std::string& test) {
  const Mark* worst = nullptr;
  for (const auto& mark : marks) {
    const bool of_test = starts(mark.item, "process." + test + ".") && lost(mark);
    worst = of_test && (worst == nullptr || mark.possible > worst->possible) ? &mark : worst;
  }
  return worst;
}

/// A fault of procedure that changed a tube by half a grade or more.
const Mark* changed_a_tube(const std::vector<Mark>& marks, const std::vector<Compared>& compared) {
  constexpr double changed = 0.5;
  const Mark* worst = nullptr;
  for (const auto& pair : compared) {
    const bool apart = std::abs(pair.learner_intensity - pair.book_intensity) >= changed;
    const Mark* fault = apart && !pair.tubes.reference_word.empty() && !pair.tubes.learner_vessel.empty()
                            ? worst_fault(marks, pair.tubes.test)
                            : nullptr;
    worst = fault != nullptr && (worst == nullptr || fault->possible > worst->possible) ? fault : worst;
  }
  return worst;
}

/// The graded reading that lost most of what it could have earned: one that was a missed finding first.
const Mark* worst_reading(const std::vector<Mark>& marks) {
  const Mark* worst = nullptr;
  const auto badness = [](const Mark& mark) {
    return 1000 - mark.graded->per_mille +
           (mark.graded->missed_finding || mark.graded->false_alarm ? 1000 : 0);
  };
  for (const auto& mark : marks) {
    const bool wrong = mark.graded && mark.graded->per_mille < nearly_full;
    worst = wrong && (worst == nullptr || badness(mark) > badness(*worst)) ? &mark : worst;
  }
  return worst;
}

void charge(Mark& mark, const std::string& root, const std::string& words) {
  mark.root = root;
  mark.root_words = words;
}

/// Nothing came of a part that was not done: that alone is the fault.
bool charge_not_done(Mark& mark, const std::vector<Mark>& marks) {
  const auto part =
      mark.ledger == Ledger::Process ? mark.item.substr(mark.item.find('.') + 1) : part_of(mark.item);
  const bool whole = part.find('.') == std::string::npos; // And not one rule of it.
  const Mark* process = whole ? find(marks, "process." + part) : nullptr;
  const bool undone =
      process != nullptr && process->possible > 0 && process->earned == 0 && !process->reason.empty();
  if (undone) {
    charge(mark, process->item, process->reason);
  }
  return undone;
}

} // namespace

void charge_roots(std::vector<Mark>& marks, const Case& /*marked*/, const std::vector<Compared>& compared) {
  const std::vector<Mark> as_marked = marks;
  const Mark* tube = changed_a_tube(as_marked, compared);
  const Mark* reading = worst_reading(as_marked);
  for (auto& mark : marks) {
    if (!lost(mark)) {
      continue;
    }
    const bool concluded = mark.ledger == Ledger::Interpretation && starts(mark.item, "decision.");
    if (concluded && tube != nullptr) {
      charge(mark, tube->item, tube->label);
    } else if (concluded && reading != nullptr) {
      charge(mark, reading->item, reading->label);
    } else if (mark.ledger == Ledger::Safety || !charge_not_done(mark, as_marked)) {
      charge(mark, mark.item, mark.label);
    }
  }
}

std::vector<RootLoss> losses_by_root(const std::vector<Mark>& marks) {
  std::vector<RootLoss> all;
  for (const auto& mark : marks) {
    if (!lost(mark)) {
      continue;
    }
    auto found =
        std::find_if(all.begin(), all.end(), [&](const RootLoss& loss) { return loss.root == mark.root; });
    if (found == all.end()) {
      found = all.insert(all.end(), {mark.root, mark.root_words, 0, {}});
    }
    found->lost += mark.possible - mark.earned;
    found->items.push_back(mark.item);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const RootLoss& a, const RootLoss& b) { return a.lost > b.lost; });
  return all;
}

std::vector<Finding> findings_of(const std::vector<Mark>& marks) {
  bool asked = false;
  bool right = true;
  for (const auto& mark : marks) {
    if (starts(mark.item, "decision.") && mark.possible > 0) {
      asked = true;
      right = right && !lost(mark);
    }
  }
  std::vector<Finding> all;
  for (const auto& mark : marks) {
    if (!asked || !mark.graded) {
      continue;
    }
    const bool read = mark.graded->read && mark.graded->per_mille >= nearly_full;
    const char* words = read && right ? "read right and interpreted right"
                        : read        ? "the tube was read as it was, the conclusion was wrong"
                        : right       ? "the right answer from a wrong reading"
                                      : "read wrong and interpreted wrong: train the eye first";
    all.push_back({part_of(mark.item), mark.label, read, right, words});
  }
  return all;
}

namespace {

/// A grade that was asked for where there is no tube of the learner's to hold it against.
bool is_unread_grade(const Mark& mark) {
  constexpr std::string_view ending = ".grade";
  return mark.ledger == Ledger::Reading && mark.possible > 0 && mark.earned == 0 &&
         mark.item.size() > ending.size() &&
         mark.item.compare(mark.item.size() - ending.size(), ending.size(), ending) == 0;
}

} // namespace

Standing standing_of(const std::vector<Mark>& marks, const PassRule& pass, bool safety_stop) {
  Standing standing;
  long sum = 0;
  std::vector<long> constant(procedure::most_words, 0);
  int unread = 0;
  for (const auto& mark : marks) {
    if (!mark.graded) {
      unread += is_unread_grade(mark) ? 1 : 0;
      continue;
    }
    const Graded& graded = *mark.graded;
    ++standing.readings;
    sum += graded.per_mille;
    for (std::size_t y = 0; y < constant.size() && !graded.answers.empty(); ++y) {
      constant[y] += graded.answers[std::min(y, graded.answers.size() - 1)];
    }
    const int off = graded.read ? std::abs(*graded.read - graded.truth) : -1;
    standing.exact += off == 0 ? 1 : 0;
    standing.within_one += off == 0 || off == 1 ? 1 : 0;
    standing.missed_findings += graded.missed_finding ? 1 : 0;
    standing.false_alarms += graded.false_alarm ? 1 : 0;
  }
  if (standing.readings > 0) {
    const long n = standing.readings;
    const auto rounded = [n](long total) { return static_cast<int>((total + n / 2) / n); };
    standing.mean = rounded(sum);
    standing.best_constant = rounded(*std::max_element(constant.begin(), constant.end()));
    if (standing.best_constant < 1000) {
      standing.skill = (standing.mean - standing.best_constant) * 1000 / (1000 - standing.best_constant);
    }
  }
  if (standing.readings > 0 && standing.mean < pass.mark) {
    standing.not_passed_because.push_back(
        fmt::format("the readings earned {} of 1000 on average, {} are needed", standing.mean, pass.mark));
  }
  if (unread > 0) { // Who reads nothing misses nothing: that is no pass.
    standing.not_passed_because.push_back(
        fmt::format("{} asked test{} not done and read", unread, unread == 1 ? " was" : "s were"));
  }
  if (standing.missed_findings > pass.missed_findings) {
    standing.not_passed_because.push_back(fmt::format("{} finding{} missed that a doctor must hear of",
                                                      standing.missed_findings,
                                                      standing.missed_findings == 1 ? " was" : "s were"));
  }
  if (safety_stop) {
    standing.not_passed_because.emplace_back("somebody could have been hurt");
  }
  standing.passed = standing.not_passed_because.empty();
  return standing;
}

std::vector<std::string> say(const Standing& standing) {
  std::vector<std::string> lines;
  const auto percent = [](int per_mille) { return fmt::format("{} %", (per_mille + 5) / 10); };
  if (standing.readings > 0) {
    lines.push_back(fmt::format(
        "{} graded readings: {} of the credit on average; {} exact, {} within one grade, {} missed.",
        standing.readings, percent(standing.mean), standing.exact, standing.within_one,
        standing.missed_findings));
    lines.push_back(
        standing.skill
            ? fmt::format("One and the same answer to all of them would have earned {} at best; what you "
                          "earned above "
                          "that is {} of what can be earned above it.",
                          percent(standing.best_constant),
                          *standing.skill < 0 ? "none" : percent(*standing.skill))
            : std::string(
                  "One and the same answer to all of them would have earned as much: too little variety to "
                  "tell skill from luck."));
  }
  std::string why;
  for (const auto& reason : standing.not_passed_because) {
    why += (why.empty() ? "" : "; ") + reason;
  }
  lines.push_back(standing.passed ? "Passed." : "Not passed: " + why + ".");
  return lines;
}

} // namespace matula::scoring
