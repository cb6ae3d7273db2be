#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <optional>

namespace matula::scoring {
namespace {

struct Part {
  std::string key;
  std::string label;
  bool done = false;
  Facts facts;
};

Part look_part(const Case& marked) {
  Part part{"look", "inspection of the specimen", false, {}};
  for (const char* item : {"colour", "clarity", "odour"}) {
    part.done = part.done || !marked.entry(item).empty();
  }
  const auto& mixed = marked.replay.watch.mixed_before_first_pour;
  if (mixed) {
    part.facts["specimen_mixed"] = *mixed ? 1 : 0;
  }
  if (const auto odour = marked.replay.written.find("odour"); odour != marked.replay.written.end()) {
    part.facts["smelled_before_odour"] = odour->second.facts.at("smelled_before_odour");
  }
  return part;
}

std::vector<Part> asked_parts(const Case& marked) {
  std::vector<Part> parts;
  if (marked.asks("look")) {
    parts.push_back(look_part(marked));
  }
  if (marked.asks("gravity")) {
    const bool done = marked.replay.float_at_reading.has_value();
    parts.push_back({"gravity", "specific gravity", done, marked.replay.gravity});
  }
  for (const auto& test : marked.book.tests) {
    if (marked.asks(test.key)) {
      const auto& moment = marked.replay.tests.at(test.key);
      parts.push_back({test.key, test.label, !moment.vessel.empty(), moment.facts});
    }
  }
  return parts;
}

/// The sentence for a broken rule; nothing when the fact keeps to its range or was not measured.
std::optional<std::string> fault(const Rule& rule, const Facts& facts) {
  const auto fact = facts.find(rule.fact);
  if (fact == facts.end()) {
    return std::nullopt;
  }
  if (fact->second < rule.min) {
    return fill(rule.below, rule, facts);
  }
  if (fact->second > rule.max) {
    return fill(rule.above, rule, facts);
  }
  return std::nullopt;
}

void mark_part(std::vector<Mark>& marks, const Part& part, int pot, const Rulebook& book) {
  Mark rest;
  rest.ledger = Ledger::Process;
  rest.item = "process." + part.key;
  rest.label = "Procedure of the " + part.label;
  if (!part.done) {
    rest.possible = pot;
    rest.reason = fmt::format("The {} was not done.", part.label);
    marks.push_back(std::move(rest));
    return;
  }
  int left = pot;
  for (const auto& rule : book.rules) {
    const auto sentence = rule.part == part.key ? fault(rule, part.facts) : std::nullopt;
    if (!sentence) {
      continue;
    }
    const int percent = book.rank_percent[static_cast<std::size_t>(rule.rank)];
    const int cost = percent == 0 ? 0 : std::min(left, std::max(1, marks_for(percent * 10, pot)));
    left -= cost;
    Mark mark;
    mark.ledger = Ledger::Process;
    mark.item = "process." + rule.key;
    mark.label = rule.label;
    mark.possible = cost;
    mark.entered = say_number(part.facts.at(rule.fact));
    mark.reason = *sentence;
    marks.push_back(std::move(mark));
  }
  rest.possible = left;
  rest.earned = left;
  marks.push_back(std::move(rest));
}

} // namespace

std::vector<Mark> mark_process(const Case& marked) {
  const auto parts = asked_parts(marked);
  std::vector<int> shares;
  for (const auto& part : parts) {
    shares.push_back(marked.book.part_shares.at(part.key));
  }
  const auto pots = split_marks(marked.scenario.marking.process_weight, shares);
  std::vector<Mark> marks;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    mark_part(marks, parts[i], pots[i], marked.book);
  }
  return marks;
}

std::vector<Mark> mark_safety(const Case& marked, bool& stop) {
  std::vector<Mark> marks;
  for (const auto& rule : marked.book.safety) {
    if (marked.replay.safety.count(rule.fact) == 0) {
      continue; // No occasion for it in this sitting.
    }
    const auto sentence = fault(rule, marked.replay.safety);
    Mark mark;
    mark.ledger = Ledger::Safety;
    mark.item = "safety." + rule.key;
    mark.label = rule.label;
    mark.possible = rule.marks;
    mark.earned = sentence ? 0 : rule.marks;
    mark.reason = sentence.value_or("");
    stop = stop || (sentence && rule.stop);
    marks.push_back(std::move(mark));
  }
  return marks;
}

} // namespace matula::scoring
