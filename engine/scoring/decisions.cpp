#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/gravity_basis.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

std::string wording(const scenario::Decision& decision, const std::string& key) {
  for (const auto& [option, words] : decision.options) {
    if (option == key) {
      return words;
    }
  }
  return key;
}

Mark note(const std::string& item, const std::string& label) {
  Mark mark;
  mark.ledger = Ledger::Interpretation;
  mark.item = item;
  mark.label = label;
  return mark;
}

void note_gravity(std::vector<Mark>& marks, const Case& marked) {
  const auto reported = number_from_text(marked.entry("sg.corrected"));
  const auto truth = true_gravity(marked);
  if (!reported || !truth || std::abs(*reported - *truth) < marked.scenario.marking.gravity_none) {
    return;
  }
  Mark mark = note("sg.specimen", "Reported specific gravity and the specimen");
  mark.entered = say_gravity(*reported);
  mark.expected = say_gravity(*truth);
  mark.reason = fmt::format("You would report {}; the specimen, free of protein and sugar and at the float's "
                            "temperature, is {}. The lines above say where the difference came from.",
                            mark.entered, mark.expected);
  marks.push_back(std::move(mark));
}

/// Whether a rule of the test's procedure was broken.
bool faulty(const std::vector<Mark>& process, const std::string& test) {
  const std::string prefix = "process." + test + ".";
  return std::any_of(process.begin(), process.end(),
                     [&](const Mark& mark) { return mark.item.compare(0, prefix.size(), prefix) == 0; });
}

} // namespace

std::vector<Mark> mark_decisions(const Case& marked) {
  std::vector<Mark> marks;
  for (const auto& decision : marked.scenario.decisions) {
    Mark mark = note("decision." + decision.key, decision.prompt);
    mark.possible = decision.weight;
    const auto chosen = marked.entry(mark.item);
    mark.entered = chosen.empty() ? "" : wording(decision, chosen);
    mark.expected = wording(decision, decision.right);
    mark.earned = chosen == decision.right ? decision.weight : 0;
    if (mark.earned < mark.possible) {
      mark.reason = fmt::format("{} For this specimen the answer is \"{}\". {}",
                                chosen.empty() ? "Nothing was decided."
                                               : fmt::format("You chose \"{}\".", mark.entered),
                                mark.expected, decision.why);
    }
    marks.push_back(std::move(mark));
  }
  return marks;
}

std::vector<Mark> note_specimen(const Case& marked, const std::vector<Compared>& compared,
                                const std::vector<Mark>& process) {
  std::vector<Mark> marks;
  for (const auto& pair : compared) {
    const auto& tubes = pair.tubes;
    const bool apart = std::abs(pair.learner_intensity - pair.book_intensity) >= 0.5;
    if (tubes.learner_vessel.empty() || tubes.learner_tube_word == tubes.reference_word || !apart) {
      continue;
    }
    Mark mark = note(tubes.test + ".specimen",
                     "Your tube and the specimen: " + marked.book.find_test(tubes.test)->label);
    mark.expected = tubes.reference_word;
    mark.reason = fmt::format("{} truly showed {}, and your reading was marked against that. The same "
                              "specimen done by the book shows {}. {}",
                              capital(own_tube(*marked.book.find_test(tubes.test))), tubes.learner_tube_word,
                              tubes.reference_word,
                              faulty(process, tubes.test)
                                  ? "The difference comes from how the tube was made, and that is charged to "
                                    "the procedure. The result is not valid; the test must be repeated."
                                  : "No rule of the procedure was broken: small differences within the "
                                    "method have tipped it over the line between two grades.");
    marks.push_back(std::move(mark));
  }
  note_gravity(marks, marked);
  return marks;
}

} // namespace matula::scoring
