#include "engine/reception/judge.hpp"

#include "engine/reception/facts.hpp"

#include <algorithm>

namespace matula::reception {

namespace {

bool holds_word(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool applies(const Rule& rule, const Facts& facts) {
  return std::all_of(rule.when.begin(), rule.when.end(), [&](const auto& condition) {
    const auto fact = facts.words.find(condition.first);
    return fact != facts.words.end() && holds_word(condition.second, fact->second);
  });
}

/// A fact that cannot be told breaks nothing.
bool is_broken(const Rule& rule, const Facts& facts) {
  if (const auto number = facts.numbers.find(rule.fact); number != facts.numbers.end()) {
    return number->second < rule.min || number->second > rule.max;
  }
  const auto word = facts.words.find(rule.fact);
  if (word == facts.words.end()) {
    return false;
  }
  const bool wanted = rule.one_of.empty() || holds_word(rule.one_of, word->second);
  return !wanted || holds_word(rule.none_of, word->second);
}

std::vector<std::string> spoiled_by(const Rule& rule, const Delivery& delivery) {
  std::vector<std::string> spoiled;
  for (const std::string& request : delivery.requests) {
    if (holds_word(rule.touches, request)) {
      spoiled.push_back(request);
    }
  }
  return spoiled;
}

/// What the rule makes of it; false when nothing that is asked is spoiled.
bool weigh(const Rule& rule, const Delivery& delivery, Broken& broken) {
  broken.rule = &rule;
  broken.verdict = rule.verdict;
  if (!rule.touches.empty()) {
    broken.spoiled = spoiled_by(rule, delivery);
    if (broken.spoiled.empty()) {
      return false;
    }
    const bool all = broken.spoiled.size() == delivery.requests.size();
    if (!all && rule.verdict == Verdict::Refuse) {
      broken.verdict = rule.partly;
    }
  }
  broken.would_be_refused = broken.verdict == Verdict::Refuse;
  if (broken.would_be_refused && !delivery.replaceable) {
    broken.verdict = Verdict::Qualify;
  }
  return true;
}

} // namespace

bool Judgement::has(const std::string& fault) const {
  return std::any_of(broken.begin(), broken.end(),
                     [&](const Broken& one) { return one.rule->fault == fault; });
}

Judgement judge(const Delivery& delivery, const Book& book) {
  Judgement judgement;
  const Facts facts = facts_of(delivery, book);
  for (const Rule& rule : book.rules) {
    Broken broken;
    if (!applies(rule, facts) || !is_broken(rule, facts) || !weigh(rule, delivery, broken)) {
      continue;
    }
    judgement.verdict = std::max(judgement.verdict, broken.verdict);
    judgement.nobody_knows_whose = judgement.nobody_knows_whose || rule.identity;
    judgement.broken.push_back(std::move(broken));
  }
  return judgement;
}

} // namespace matula::reception
