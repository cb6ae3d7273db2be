#include "engine/attribution/tube.hpp"

#include "engine/assets/world.hpp"
#include "engine/attribution/deviations.hpp"
#include "engine/attribution/shares.hpp"
#include "engine/attribution/words.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/explain.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace matula::attribution {
namespace {

std::vector<const Deviation*> chosen(const std::vector<Deviation>& all, PutRight set) {
  std::vector<const Deviation*> some;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if ((set >> i & 1U) != 0) {
      some.push_back(&all[i]);
    }
  }
  return some;
}

/// The tube by the book, read; nothing when the recipe could not be finished.
std::optional<reading::GradeReading> read_book(const Sitting& sitting, const scoring::TestRule& test) {
  const auto& recipe = sitting.standards.recipes.at(test.key);
  const auto book = scoring::do_by_the_book(sitting.setup, recipe);
  if (!book.stopped_because.empty()) {
    return std::nullopt;
  }
  return scoring::read_vessel(book.state, sitting.setup, sitting.world.thresholds, test.scale, book.vessel);
}

} // namespace

std::size_t events_before(const std::vector<Heard>& heard, const std::string& item) {
  std::size_t upto = heard.size();
  for (std::size_t i = 0; i < heard.size(); ++i) {
    const auto* record = std::get_if<sitting::Record>(&heard[i].event.what);
    upto = record != nullptr && record->item == item ? i : upto;
  }
  return upto;
}

void conclude(Explanation& explanation, const std::vector<std::string>& keys,
              const std::vector<std::string>& words, const std::vector<std::string>& rules,
              const std::vector<bool>& matters, const std::vector<double>& amounts) {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (matters[i]) {
      explanation.shares.push_back({keys[i], words[i], amounts[i], rules[i]});
    } else if (!within_method({keys[i], words[i], 0, rules[i]})) {
      explanation.harmless.push_back(words[i]);
    }
  }
  std::stable_sort(explanation.shares.begin(), explanation.shares.end(),
                   [](const Share& a, const Share& b) { return std::abs(a.amount) > std::abs(b.amount); });
  explanation.words = say(explanation);
}

Explanation explain_tube(const Sitting& sitting, const scoring::TestRule& test) {
  Explanation explanation;
  explanation.test = test.key;
  explanation.title = test.title;
  explanation.own_tube = scoring::own_tube(test);
  const auto& why = sitting.standards.rules.why;
  explanation.visible = why.visible_grades;
  const auto& moment = sitting.replay.tests.at(test.key);
  const auto book = read_book(sitting, test);
  if (moment.vessel.empty() || !moment.tube || !book) {
    return explanation;
  }
  const Work work =
      work_on(sitting.heard, events_before(sitting.heard, test.item()), moment.time_s, moment.vessel);
  const Bench bench{&sitting.setup, sitting.fresh};
  const auto read = [&](const bench::State& state) {
    return scoring::read_vessel(state, sitting.setup, sitting.world.thresholds, test.scale, work.vessel)
        .intensity;
  };
  Trail trail;
  const double found = read(replay(bench, work, {}, &trail));
  const Method method{test,
                      sitting.standards.recipes.at(test.key),
                      why,
                      sitting.world.catalogue,
                      sitting.report.marks,
                      sitting.setup.room_c};
  auto deviations = deviations_of(method, work, trail);
  deviations.resize(std::min(deviations.size(), most_deviations));
  Outcomes outcomes(
      [&](PutRight set) { return set == 0 ? found : read(replay(bench, work, chosen(deviations, set))); });
  const auto shares = share_out(deviations.size(),
                                {why.visible_grades, static_cast<std::size_t>(why.exact_up_to),
                                 static_cast<std::size_t>(why.orders), sitting.scenario.seed},
                                outcomes);
  explanation.done = true;
  explanation.found = shares.found;
  explanation.put_right = shares.right;
  explanation.by_the_book = book->intensity;
  explanation.found_word = test.word(moment.tube->grade);
  explanation.book_word = test.word(book->grade);
  explanation.exact = shares.exact;
  explanation.replays = outcomes.known();
  std::vector<std::string> keys;
  std::vector<std::string> words;
  std::vector<std::string> rules;
  for (const auto& one : deviations) {
    keys.push_back(one.key);
    words.push_back(one.words);
    rules.push_back(one.rule);
  }
  conclude(explanation, keys, words, rules, shares.matters, shares.amounts);
  return explanation;
}

} // namespace matula::attribution
