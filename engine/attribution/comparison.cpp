#include "engine/attribution/comparison.hpp"

#include "engine/attribution/gaps.hpp"
#include "sim/matter/catalogue.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {

using Kind = Deed::Kind;

double apart(double found, double right) {
  constexpr double next_to_nothing = 1e-6;
  return std::abs(std::log(std::max(found, next_to_nothing) / std::max(right, next_to_nothing)));
}

Total total_of(const std::vector<Deed>& deeds, const Deed& like) {
  Total total;
  for (const auto& deed : deeds) {
    if (deed.kind == Kind::Add && deed.same_as(like)) {
      total.amount += deed.amount;
      total.gently = total.gently && deed.gently;
      total.deeds.push_back(&deed);
    }
  }
  return total;
}

std::vector<std::size_t> steps_of(const Total& total) {
  std::vector<std::size_t> steps;
  for (const auto* deed : total.deeds) {
    steps.insert(steps.end(), deed->steps.begin(), deed->steps.end());
  }
  return steps;
}

Comparison::Comparison(const Method& method, const Work& work, const Trail& trail)
    : method_(method), work_(work), trail_(trail), learner_(deeds_of(work, trail, method.test)),
      recipe_(deeds_of(method.recipe, method.test, names_for(method.recipe, work))),
      answers_(aligned(recipe_.deeds, learner_)) {}

std::vector<Deviation> Comparison::find() {
  if (learner_.empty()) {
    return {};
  }
  join_stays(learner_, answers_);
  specimen();
  volumes();
  extras();
  heating();
  mixing();
  others();
  times();
  return std::move(found_);
}

std::string Comparison::broken(const std::vector<std::string>& facts) const {
  return broken_rule(method_.marks, method_.test.rules, facts);
}

bool Comparison::off(double found, double right, const std::vector<std::string>& facts) const {
  const double ratio = apart(found, right);
  return ratio > std::log(method_.why.loose_ratio) ||
         (ratio > std::log(method_.why.tight_ratio) && !broken(facts).empty());
}

Deviation& Comparison::note(std::string key, std::string words, std::vector<std::string> facts) {
  Deviation one;
  one.key = std::move(key);
  one.words = std::move(words);
  one.rule = broken(facts);
  one.facts = std::move(facts);
  found_.push_back(std::move(one));
  return found_.back();
}

std::string Comparison::name_of(const Deed& deed) const {
  if (deed.what == "specimen") {
    return "urine";
  }
  const auto* reagent = method_.catalogue.find_reagent(deed.bottle);
  return reagent != nullptr ? inside_a_sentence(reagent->label) : deed.bottle;
}

std::string Comparison::inside_a_sentence(std::string label) {
  static const std::array<const char*, 12> common{"Acetic",   "Acetate",        "Nitric",   "Distilled",
                                                  "Ammonia",  "Ferric",         "Barium",   "Sodium",
                                                  "Hydrogen", "Sulfosalicylic", "Tincture", "Saturated"};
  const bool lower =
      std::any_of(common.begin(), common.end(), [&](const char* word) { return label.rfind(word, 0) == 0; });
  if (lower) {
    label[0] = static_cast<char>(label[0] - 'A' + 'a');
  }
  return label;
}

std::vector<std::string> Comparison::facts_of(const Deed& deed) {
  if (deed.what == "specimen") {
    return {"urine_ml"};
  }
  return deed.what == "reagent"
             ? std::vector<std::string>{"reagent_ml", "acid_per_urine", "acid_drops", "acid_drops_if_any"}
             : std::vector<std::string>{};
}

std::vector<const Deed*> Comparison::things() const {
  std::vector<const Deed*> all;
  for (const auto& deed : recipe_.deeds) {
    const bool known = std::any_of(all.begin(), all.end(), [&](const Deed* d) { return d->same_as(deed); });
    if (deed.kind == Kind::Add && !known) {
      all.push_back(&deed);
    }
  }
  return all;
}

double Comparison::waits_after(std::size_t r) const {
  return r + 1 < recipe_.deeds.size() ? recipe_.deeds[r + 1].waited_s : recipe_.last_wait_s;
}

Change Comparison::insertion(std::size_t r) const {
  Change change;
  change.kind = Change::Kind::Insert;
  change.recipe = recipe_.deeds[r].recipe;
  change.order = r;
  std::optional<std::size_t> before;
  std::optional<std::size_t> after;
  for (std::size_t i = 0; i < answers_.size(); ++i) {
    before = i < r && answers_[i] ? answers_[i] : before;
    after = i > r && answers_[i] && !after ? answers_[i] : after;
  }
  const std::size_t end = work_.steps.size();
  const std::size_t next = after ? learner_[*after].steps.front() : end;
  change.first = before && recipe_.deeds[r].waited_s <= waits_after(r);
  change.at = change.first ? std::min(learner_[*before].next_step, next) : next;
  return change;
}

bool Comparison::answered(std::size_t j) const {
  return std::any_of(answers_.begin(), answers_.end(), [j](const auto& answer) { return answer == j; });
}

} // namespace matula::attribution
