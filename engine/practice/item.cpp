#include "engine/practice/item.hpp"

#include "engine/practice/difficulty.hpp"
#include "engine/practice/judging.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/standards.hpp"

#include <stdexcept>

namespace matula::practice {

namespace {

/// How hard a thing came out.
struct Difficulty {
  const Store& store;
  const Unknown& unknown;

  double operator()(const Tube& tube) const {
    const auto& rule = store.standards->rules.find_test(tube.test)->ordinal;
    return difficulty_at(distance_to_line(tube.read.intensity, rule, store.rules.choice.right_from),
                         store.rules.difficulty);
  }
  double operator()(const FloatJar& jar) const {
    const double distance = distance_to_half(
        jar.shows.reading_at_surface, store.standards->rules.gravity.division, store.rules.floats.full);
    constexpr double mm = 20;
    return difficulty_at(distance, store.rules.difficulty) +
           store.rules.difficulty.float_per_20_mm * std::abs(jar.eye_mm) / mm;
  }
  double operator()(const Sum& sum) const { return sum_difficulty(sum, store.rules.difficulty); }
  double operator()(const HandedIn& handed) const {
    return delivery_difficulty(unknown.what, handed.verdict, store.rules.difficulty);
  }
};

} // namespace

Item make_item(const Store& store, const Unknown& unknown) {
  Item item;
  item.unknown = unknown;
  if (has_tubes(unknown.skill)) {
    item.thing = make_tube(store, unknown);
  } else if (unknown.skill == Skill::Meniscus) {
    item.thing = make_float(store, unknown);
  } else if (unknown.skill == Skill::Corrections) {
    item.thing = make_sum(store, unknown);
  } else {
    item.thing = make_delivery(store, unknown);
  }
  item.difficulty = std::visit(Difficulty{store, unknown}, item.thing);
  return item;
}

Judged judge(const Store& store, const Item& item, const Reply& reply) {
  const auto at = [&](std::size_t i) { return i < reply.size() ? reply[i] : std::string(); };
  Judged judged;
  if (const auto* tube = std::get_if<Tube>(&item.thing)) {
    judged = judge_tube(store, *tube, at(0));
  } else if (const auto* jar = std::get_if<FloatJar>(&item.thing)) {
    judged = judge_float(store, *jar, at(0));
  } else if (const auto* sum = std::get_if<Sum>(&item.thing)) {
    judged = judge_sum(store, *sum, {at(0), at(1), at(2), at(3), at(4)});
  } else {
    judged = judge_delivery(store, std::get<HandedIn>(item.thing), at(0), at(1));
  }
  return judged;
}

learner::Answer answer_of(const Store& store, const Item& item, const Judged& judged, learner::From from,
                          std::int64_t when_s) {
  learner::Answer answer;
  answer.when_s = when_s;
  answer.from = from;
  answer.skill = to_word(item.unknown.skill);
  answer.unknown = to_text(item.unknown);
  answer.difficulty = item.difficulty;
  answer.credit = judged.credit;
  answer.written = judged.written;
  answer.expected = judged.expected;
  answer.fault = judged.fault;
  if (const auto* tube = std::get_if<Tube>(&item.thing)) {
    answer.test = tube->test;
    answer.intensity = tube->read.intensity;
    if (const auto grade = store.standards->rules.find_test(tube->test)->grade(judged.written)) {
      answer.grade = static_cast<int>(*grade);
    }
  }
  return answer;
}

} // namespace matula::practice
