#include "engine/practice/handed_in.hpp"

#include "engine/assets/world.hpp"
#include "engine/generator/generate.hpp"
#include "engine/practice/plant.hpp"
#include "engine/practice/store.hpp"
#include "engine/reception/judge.hpp"
#include "engine/scenario/scenario.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <stdexcept>

namespace matula::practice {

namespace {

using reception::Delivery;

constexpr int most_patients = 40;
constexpr std::size_t reasons_shown = 6;

/// A patient's delivery as the generator has it, a few minutes old; nothing where it is spoiled from the
/// start.
std::optional<Delivery> in_order(const Store& store, const Draws& draws, int attempt) {
  const auto name = [attempt](const char* what) { return fmt::format("{} {}", what, attempt); };
  const auto& pattern = store.patterns[draws.pick(name("pattern"), store.patterns.size())];
  const auto variant =
      generator::generate(pattern, store.people, draws.seed(name("patient")), false, store.world->catalogue);
  if (!variant) {
    return std::nullopt;
  }
  const auto scenario = scenario::parse(variant->text, variant->key, store.world->catalogue);
  if (!scenario || !scenario->collection || scenario->collection->day) {
    return std::nullopt;
  }
  Delivery delivery = *scenario->collection;
  const auto& age = store.rules.deliveries.age_min;
  delivery.received_min = delivery.passed_min.value_or(delivery.received_min) +
                          static_cast<int>(std::lround(draws.between(name("age"), age.low, age.high)));
  const auto judgement = judge(delivery, *store.book);
  const bool good = delivery.passed_min && judgement.verdict == reception::Verdict::Accept;
  return good ? std::optional<Delivery>(delivery) : std::nullopt;
}

/// In order or spoiled as wanted; nothing where the fault does not matter for what this patient's form asks.
std::optional<Delivery> spoiled(const Store& store, const Unknown& unknown, const Draws& draws, int attempt) {
  auto delivery = in_order(store, draws, attempt);
  if (!delivery || unknown.what == no_fault) {
    return delivery;
  }
  if (!plant(unknown.what, store.rules.deliveries, draws, *delivery)) {
    throw std::invalid_argument("no fault that can be planted: " + unknown.what);
  }
  if (draws.even("replaceable") < store.rules.deliveries.not_replaceable) {
    delivery->replaceable = false;
    delivery->remark += std::string(delivery->remark.empty() ? "" : " ") + "It cannot be had again.";
  }
  return judge(*delivery, *store.book).has(unknown.what) ? delivery : std::nullopt;
}

/// Faults that are not there, in an order of chance.
std::vector<std::string> other_faults(const Store& store, const reception::Judgement& judgement,
                                      const Draws& draws) {
  std::vector<std::pair<double, std::string>> ranked;
  for (const auto& fault : store.book->faults) {
    if (fault.group != "day" && !judgement.has(fault.key)) {
      ranked.emplace_back(draws.even("reason " + fault.key), fault.key);
    }
  }
  std::sort(ranked.begin(), ranked.end());
  std::vector<std::string> keys;
  for (const auto& [rank, key] : ranked) {
    keys.push_back(key);
  }
  return keys;
}

void add_reasons(const Store& store, const Unknown& unknown, const reception::Judgement& judgement,
                 HandedIn& handed) {
  const Draws draws(unknown.seed);
  auto keys = other_faults(store, judgement, draws);
  const bool faulty = unknown.what != no_fault;
  keys.resize(std::min(keys.size(), reasons_shown - (faulty ? 2 : 1)));
  if (faulty) {
    keys.insert(keys.begin() + static_cast<std::ptrdiff_t>(draws.pick("place", keys.size() + 1)),
                unknown.what);
  }
  for (const std::string& key : keys) {
    handed.reasons.emplace_back(key, store.book->find_fault(key)->label);
  }
  handed.reasons.emplace_back(no_fault, "Nothing that matters for what is asked");
  handed.right_reason = unknown.what;
}

} // namespace

HandedIn make_delivery(const Store& store, const Unknown& unknown) {
  const Draws draws(unknown.seed);
  for (int attempt = 0; attempt < most_patients; ++attempt) {
    const auto delivery = spoiled(store, unknown, draws, attempt);
    if (!delivery) {
      continue;
    }
    const auto judgement = judge(*delivery, *store.book);
    HandedIn handed;
    handed.delivery = *delivery;
    handed.verdict = to_word(judgement.verdict);
    for (const auto& broken : judgement.broken) {
      if (broken.verdict != reception::Verdict::Note) {
        handed.faults.push_back(broken.rule->fault);
      }
    }
    add_reasons(store, unknown, judgement, handed);
    return handed;
  }
  throw std::invalid_argument("no patient for whom this fault matters: " + unknown.what);
}

} // namespace matula::practice
