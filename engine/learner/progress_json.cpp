#include "engine/learner/progress_json.hpp"

#include <nlohmann/json.hpp>

namespace matula::learner {

namespace {

using Json = nlohmann::ordered_json;

Json json_of(const Estimate& estimate) {
  return {{"value", estimate.value}, {"low", estimate.low}, {"high", estimate.high}};
}

Json json_of(const SkillProgress& skill) {
  Json json{{"skill", skill.skill},
            {"answers", skill.answers},
            {"right", skill.right},
            {"ability", {{"mean", skill.ability.mean}, {"sd", skill.ability.sd}}},
            {"chance_of_a_middling_unknown", skill.chance},
            {"mastered", skill.mastered},
            {"last_s", skill.last_s},
            {"trend",
             {{"change", skill.trend.change}, {"sd", skill.trend.sd}, {"sentence", skill.trend.sentence}}}};
  if (skill.graded) {
    const GradedFigures& g = *skill.graded;
    json["graded"] = {{"readings", g.readings},
                      {"exact", g.exact},
                      {"within_one", g.within_one},
                      {"missed", g.missed},
                      {"mean", g.mean},
                      {"best_constant", g.constant},
                      {"best_constant_mean", g.constant_mean},
                      {"skill", g.skill}};
  }
  return json;
}

Json json_of(const GroupLines& group) {
  Json json{{"tests", group.key},
            {"words", group.words},
            {"readings", group.readings},
            {"spread", group.spread},
            {"shift", group.shift ? json_of(*group.shift) : Json()},
            {"shift_chance", group.shift_chance},
            {"sentence", group.sentence},
            {"lines", Json::array()}};
  for (const OwnLine& line : group.lines) {
    json["lines"].push_back({{"below", line.below},
                             {"above", line.above},
                             {"reference", line.reference},
                             {"own", json_of(line.own)},
                             {"readings_near", line.near},
                             {"chance", line.chance},
                             {"sentence", line.sentence}});
  }
  return json;
}

Json json_of(const Swap& swap) {
  return {{"one", swap.one},          {"other", swap.other},         {"tubes", swap.tubes},
          {"swapped", swap.swapped},  {"explained", swap.explained}, {"chance", swap.chance},
          {"sentence", swap.sentence}};
}

Json json_of(const RuleKept& rule) {
  return {{"skill", rule.skill},   {"rule", rule.rule},
          {"met", rule.met},       {"half_life_days", rule.half_life_days},
          {"recall", rule.recall}, {"due_s", rule.due_s},
          {"due", rule.due},       {"known", rule.known},
          {"held", rule.held}};
}

template <class T> Json list_of(const std::vector<T>& things) {
  Json list = Json::array();
  for (const T& thing : things) {
    list.push_back(json_of(thing));
  }
  return list;
}

} // namespace

std::string to_json(const Progress& progress) {
  constexpr int indent = 2;
  return Json{{"tomorrow", progress.tomorrow},
              {"skills", list_of(progress.skills)},
              {"lines", list_of(progress.lines)},
              {"swaps", list_of(progress.swaps)},
              {"rules", list_of(progress.rules)}}
      .dump(indent, ' ', false, Json::error_handler_t::replace);
}

} // namespace matula::learner
