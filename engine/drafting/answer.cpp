#include "engine/drafting/answer.hpp"

#include "engine/reception/day.hpp"
#include "engine/reception/judge.hpp"

#include <fmt/format.h>

namespace matula::drafting {

namespace {

using reception::Broken;
using reception::Verdict;

std::string say(Verdict verdict) {
  return verdict == Verdict::Refuse    ? "Refuse"
         : verdict == Verdict::Qualify ? "Accept, with a qualification"
                                       : "Accept";
}

/// "Reducing sugar, Occult blood"
std::string spoiled_words(const Broken& broken, const reception::Book& book) {
  std::string words;
  for (const std::string& request : broken.spoiled) {
    words += (words.empty() ? "" : ", ") + book.label("request", request);
  }
  return words;
}

std::string say_fault(const Broken& broken, const reception::Book& book) {
  const auto* fault = book.find_fault(broken.rule->fault);
  std::string words = (fault == nullptr ? "" : fault->label + ". ") + broken.rule->why;
  if (!broken.spoiled.empty()) {
    words += " It touches: " + spoiled_words(broken, book) + ".";
  }
  if (broken.would_be_refused && broken.verdict != Verdict::Refuse) {
    words += " It would be refused, and cannot be had again.";
  }
  return words;
}

} // namespace

Answer answer_to(const reception::Delivery& delivery, const reception::Book& book) {
  const auto judgement = reception::judge(delivery, book);
  const Verdict verdict = judgement.verdict == Verdict::Note ? Verdict::Accept : judgement.verdict;
  Answer answer;
  answer.verdict = reception::to_word(verdict);
  answer.words = say(verdict);
  for (const Broken& broken : judgement.broken) {
    const bool note = broken.verdict == Verdict::Note;
    (note ? answer.notes : answer.because).push_back(say_fault(broken, book));
  }
  if (delivery.day) {
    // Where nothing is written, every line goes on from what is expected in the line before.
    for (const auto& line :
         reception::mark_day(*delivery.day, book.day, [](const std::string&) { return std::string(); })) {
      answer.day.push_back(
          fmt::format("{}: {}{}{}", line.label, line.expected, line.unit.empty() ? "" : " ", line.unit));
    }
  }
  return answer;
}

} // namespace matula::drafting
