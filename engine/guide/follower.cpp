#include "engine/guide/follower.hpp"

#include "engine/sitting/event_json.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>

namespace matula::guide {

namespace {

using nlohmann::json;

std::string word_of(const json& value) {
  return value.is_string()    ? value.get<std::string>()
         : value.is_boolean() ? (value.get<bool>() ? "yes" : "no")
                              : "";
}

bool is_name(const std::string& word) {
  return word.size() > 1 && word.front() == '$';
}

} // namespace

Follower::Follower(const Guide& guide) : guide_(guide) {
  for (const Part& part : guide.parts) {
    done_.emplace_back(part.steps.size(), false);
  }
}

Place Follower::now() const {
  for (std::size_t part = 0; part < done_.size(); ++part) {
    for (std::size_t step = 0; step < done_[part].size(); ++step) {
      if (!done_[part][step]) {
        return {part, step};
      }
    }
  }
  return {done_.size(), 0};
}

std::size_t Follower::steps() const {
  std::size_t count = 0;
  for (const auto& part : done_) {
    count += part.size();
  }
  return count;
}

std::size_t Follower::steps_done() const {
  std::size_t count = 0;
  for (const auto& part : done_) {
    count += static_cast<std::size_t>(std::count(part.begin(), part.end(), true));
  }
  return count;
}

std::string Follower::vessel(const std::string& name) const {
  const auto found = vessels_.find(name);
  return found == vessels_.end() ? "" : found->second;
}

bool Follower::fits(const Step& step, const json& line) const {
  return std::all_of(step.done.begin(), step.done.end(), [&](const auto& field) {
    const auto& [key, wanted] = field;
    if (!line.contains(key)) {
      return false;
    }
    const json& value = line[key];
    if (wanted.word.empty()) {
      return value.is_number() && value.get<double>() >= wanted.min && value.get<double>() <= wanted.max;
    }
    if (wanted.word == "*") {
      return true;
    }
    const std::string word = word_of(value);
    if (!is_name(wanted.word)) {
      return word == wanted.word;
    }
    const std::string known = vessel(wanted.word);
    // A name is given to a tube once, and no tube bears two.
    return known.empty() ? word.starts_with("tube-") &&
                               std::none_of(vessels_.begin(), vessels_.end(),
                                            [&](const auto& named) { return named.second == word; })
                         : known == word;
  });
}

void Follower::finish(const Place& at, const json& line, double time_s) {
  done_[at.part][at.step] = true;
  last_done_s_ = time_s;
  for (const auto& [key, wanted] : guide_.parts[at.part].steps[at.step].done) {
    if (is_name(wanted.word)) {
      vessels_.try_emplace(wanted.word, word_of(line[key]));
    }
  }
}

void Follower::see(const sitting::Event& event) {
  const json line = json::parse(sitting::to_line(event));
  const Place here = now();
  remark_.clear();
  // The step that is due comes first, then later ones of its part, then those of other parts.
  for (std::size_t part = here.part; part < done_.size(); ++part) {
    for (std::size_t step = part == here.part ? here.step : 0; step < done_[part].size(); ++step) {
      const Step& one = guide_.parts[part].steps[step];
      if (done_[part][step] || !fits(one, line)) {
        continue;
      }
      const bool due = part == here.part && step == here.step;
      if (due && event.time_s - last_done_s_ < one.after_s) {
        remark_ = one.too_early;
        return;
      }
      finish({part, step}, line, event.time_s);
      return;
    }
  }
}

std::string say(const Follower& follower, const std::string& sentence) {
  std::string said;
  for (std::size_t at = 0; at < sentence.size();) {
    if (sentence[at] != '$') {
      said += sentence[at++];
      continue;
    }
    std::size_t end = at + 1;
    while (end < sentence.size() && std::isalpha(static_cast<unsigned char>(sentence[end])) != 0) {
      ++end;
    }
    std::string vessel = follower.vessel(sentence.substr(at, end - at));
    std::replace(vessel.begin(), vessel.end(), '-', ' ');
    said += vessel.empty() ? "a free tube" : vessel;
    at = end;
  }
  return said;
}

} // namespace matula::guide
