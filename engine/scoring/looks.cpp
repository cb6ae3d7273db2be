#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
  return text;
}

/// "straw-yellow" names two neighbours; either counts.
std::vector<int> places(const std::string& entry, const std::vector<std::string>& words) {
  std::vector<int> found;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (entry.find(words[i]) != std::string::npos) {
      found.push_back(static_cast<int>(i));
    }
  }
  return found;
}

int word_credit(const std::string& entry, const std::string& shown, const std::vector<std::string>& words,
                int neighbour_credit) {
  const auto right = std::find(words.begin(), words.end(), shown);
  int best = entry == shown ? 1000 : 0;
  for (const int place : places(entry, words)) {
    const int off = right == words.end() ? 2 : std::abs(place - static_cast<int>(right - words.begin()));
    best = std::max(best, off == 0 ? 1000 : off == 1 ? neighbour_credit : 0);
  }
  return best;
}

void judge_word(Mark& mark, const Case& marked, const std::vector<std::string>& words) {
  const auto& moment = marked.replay.written.at(mark.item);
  mark.expected = moment.word;
  const int credit =
      word_credit(lower(mark.entered), moment.word, words, marked.book.observation.neighbour_credit);
  mark.earned = marks_for(credit, mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason = fmt::format("You wrote \"{}\". At that time the urine in the {} looked {}{}.", mark.entered,
                              moment.vessel, moment.word, credit > 0 ? ", one step away" : "");
  }
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const auto& word : words) {
    all += all.empty() ? word : " and " + word;
  }
  return all.empty() ? "normal" : all;
}

void judge_odour(Mark& mark, const Case& marked) {
  const auto& odours = marked.replay.written.at("odour").odours;
  const auto entry = lower(mark.entered);
  const auto names = [&](const std::string& word) { return entry.find(lower(word)) != std::string::npos; };
  const auto& none = marked.book.observation.no_odour;
  const bool right = odours.empty() ? std::any_of(none.begin(), none.end(), names)
                                    : std::any_of(odours.begin(), odours.end(), names);
  mark.expected = joined(odours);
  mark.earned = right ? mark.possible : 0;
  if (!right) {
    mark.reason =
        fmt::format("You wrote \"{}\". Held near, the specimen smelled of {}.", mark.entered, mark.expected);
  }
}

Mark start(const Case& marked, const char* item, const char* label) {
  Mark mark;
  mark.item = item;
  mark.label = label;
  mark.possible = marked.scenario.marking.look_weight;
  mark.entered = marked.entry(item);
  if (mark.entered.empty()) {
    mark.reason = fmt::format("Nothing was written for it.");
  }
  return mark;
}

} // namespace

std::vector<Mark> mark_looks(const Case& marked) {
  std::vector<Mark> marks;
  if (!marked.scenario.asked.look) {
    return marks;
  }
  marks.push_back(start(marked, "colour", "Colour"));
  if (!marks.back().entered.empty()) {
    judge_word(marks.back(), marked, marked.book.observation.colours);
  }
  marks.push_back(start(marked, "clarity", "Clarity"));
  if (!marks.back().entered.empty()) {
    judge_word(marks.back(), marked, marked.book.observation.clarities);
  }
  marks.push_back(start(marked, "odour", "Odour"));
  if (!marks.back().entered.empty()) {
    judge_odour(marks.back(), marked);
  }
  return marks;
}

} // namespace matula::scoring
