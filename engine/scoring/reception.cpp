#include "engine/reception/day.hpp"
#include "engine/reception/judge.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <cmath>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

using reception::Book;
using reception::Broken;
using reception::Judgement;
using reception::Verdict;

const char* say(const std::string& verdict) {
  return verdict == "accept"    ? "accepted without remark"
         : verdict == "qualify" ? "accepted with a qualification"
         : verdict == "refuse"  ? "refused"
                                : "left undecided";
}

/// "Reducing sugar, Occult blood"
std::string spoiled_words(const Broken& broken, const Book& book) {
  std::string words;
  for (const std::string& request : broken.spoiled) {
    words += (words.empty() ? "" : ", ") + book.label("request", request);
  }
  return words;
}

/// Every rule that does not hold, in sentences.
std::string grounds(const Judgement& judgement, const Book& book) {
  std::string words;
  for (const Broken& broken : judgement.broken) {
    if (broken.verdict == Verdict::Note) {
      continue;
    }
    words += " " + broken.rule->why;
    if (broken.verdict == Verdict::Qualify && !broken.spoiled.empty()) {
      words += " It touches: " + spoiled_words(broken, book) + ".";
    }
  }
  return words.empty() ? " Form, label and container are in order." : words;
}

bool cannot_be_had_again(const Judgement& judgement, bool replaceable) {
  bool saved = false;
  for (const Broken& broken : judgement.broken) {
    saved = saved || (broken.would_be_refused && broken.verdict != Verdict::Refuse);
  }
  return saved && !replaceable;
}

int verdict_credit(const Judgement& judgement, const std::string& entered, bool replaceable,
                   const Book& book) {
  const std::string right = to_word(judgement.verdict);
  if (entered == right) {
    return 1000;
  }
  if (entered == "refuse" && !replaceable) {
    return 0;
  }
  const auto credit = book.credit.find(entered + "_for_" + right);
  return credit == book.credit.end() ? 0 : credit->second;
}

Mark mark_verdict(const Case& marked, const Judgement& judgement, const Book& book) {
  const bool replaceable = marked.scenario.collection->replaceable;
  Mark mark;
  mark.ledger = Ledger::Interpretation;
  mark.item = "reception";
  mark.label = "What to do with the delivery";
  mark.possible = book.marks.at("verdict");
  mark.entered = marked.entry(mark.item);
  mark.expected = to_word(judgement.verdict);
  mark.earned = marks_for(verdict_credit(judgement, mark.entered, replaceable, book), mark.possible);
  const std::string entered = mark.entered;
  mark.entered = entered.empty() ? "" : say(entered);
  mark.expected = say(mark.expected);
  if (mark.earned == mark.possible) {
    return mark;
  }
  mark.reason = fmt::format("It was {}; it should have been {}.{}", say(entered), mark.expected,
                            grounds(judgement, book));
  if (cannot_be_had_again(judgement, replaceable)) {
    mark.reason += " It cannot be had again: it is taken in, the report says what is wrong with it, and the "
                   "requester is told.";
  }
  if (entered == "refuse" && !replaceable) {
    mark.reason += " What is refused here is lost for good.";
  }
  return mark;
}

std::string why_of(const Judgement& judgement, const std::string& fault) {
  std::string words;
  for (const Broken& broken : judgement.broken) {
    if (broken.rule->fault == fault) {
      words += (words.empty() ? "" : " ") + broken.rule->why;
    }
  }
  return words;
}

void mark_faults(std::vector<Mark>& marks, const Case& marked, const Judgement& judgement, const Book& book) {
  bool any = false;
  for (const auto& fault : book.faults) {
    Mark mark;
    mark.ledger = Ledger::Interpretation;
    mark.item = "reception.fault." + fault.key;
    mark.label = "Fault: " + fault.label;
    const bool named = marked.entry(mark.item) == "yes";
    const bool there = judgement.has(fault.key);
    if (!named && !there) {
      continue;
    }
    any = true;
    mark.entered = named ? "that it is so" : "";
    mark.expected = there ? "that it is so" : "not a fault of this delivery";
    mark.possible = book.marks.at(there ? "fault" : "false_fault");
    mark.earned = named && there ? mark.possible : 0;
    if (!there) {
      mark.reason = "You found fault where there is none, or none that matters for what is asked.";
    } else if (!named) {
      mark.reason = "It was not named. " + why_of(judgement, fault.key);
    }
    marks.push_back(std::move(mark));
  }
  if (!any) {
    Mark mark;
    mark.ledger = Ledger::Interpretation;
    mark.item = "reception.fault";
    mark.label = "No fault found where there is none";
    mark.possible = book.marks.at("fault");
    mark.earned = marked.entry("reception").empty() ? 0 : mark.possible;
    mark.reason = mark.earned > 0 ? "" : "The delivery was not judged.";
    marks.push_back(std::move(mark));
  }
}

/// Remarks that cost nothing.
void add_notes(std::vector<Mark>& marks, const Judgement& judgement) {
  for (const Broken& broken : judgement.broken) {
    if (broken.verdict == Verdict::Note) {
      Mark mark;
      mark.ledger = Ledger::Interpretation;
      mark.item = "reception.note." + broken.rule->key;
      mark.label = "Bear in mind";
      mark.reason = broken.rule->why;
      marks.push_back(std::move(mark));
    }
  }
}

/// To take in what is nobody's is the one mistake that ends the sitting.
Mark mark_identity(const Case& marked, const Judgement& judgement, const Book& book, bool& stop) {
  Mark mark;
  mark.ledger = Ledger::Safety;
  mark.item = "safety.identity";
  mark.label = "Whose specimen it is";
  mark.possible = book.marks.at("identity");
  const std::string entered = marked.entry("reception");
  if (entered.empty()) {
    mark.reason = "The delivery was left undecided: nobody asked whose specimen it is.";
    return mark;
  }
  const bool taken = entered == "accept" || (entered == "qualify" && judgement.verdict == Verdict::Refuse);
  if (!judgement.nobody_knows_whose || !taken) {
    mark.earned = mark.possible;
    return mark;
  }
  stop = true;
  mark.entered = entered;
  mark.expected = to_word(judgement.verdict);
  mark.reason =
      "A specimen was taken in though nobody can say whose it is: its results would be written to a "
      "patient who may not have given it.";
  for (const Broken& broken : judgement.broken) {
    mark.reason += broken.rule->identity ? " " + broken.rule->why : "";
  }
  return mark;
}

void mark_exercise(std::vector<Mark>& marks, const Case& marked, const Book& book) {
  const auto& day = *marked.scenario.collection->day;
  const auto lines = mark_day(day, book.day, [&](const std::string& item) { return marked.entry(item); });
  const auto counts = split_marks(book.marks.at("counts"), std::vector<int>(day.voids.size(), 1));
  std::size_t counted = 0;
  for (const auto& line : lines) {
    Mark mark;
    mark.ledger = line.arithmetic ? Ledger::Arithmetic : Ledger::Interpretation;
    mark.item = line.item;
    mark.label = line.label;
    mark.possible = line.mark == "counts" ? counts[counted++] : book.marks.at(line.mark);
    mark.earned = line.right ? mark.possible : 0;
    mark.entered = line.entered;
    mark.expected = line.expected;
    mark.reason = line.reason;
    marks.push_back(std::move(mark));
  }
}

std::string more_or_less(double share) {
  return fmt::format("{:.0f} % too {}", std::abs(share) * 100, share > 0 ? "much" : "little");
}

/// What a wrong void did to the result, at no cost.
void note_balance(std::vector<Mark>& marks, const reception::DayRecord& day) {
  const auto balance = balance_of(day);
  if (balance.true_ml == balance.bottle_ml) {
    return;
  }
  Mark mark;
  mark.ledger = Ledger::Arithmetic;
  mark.item = "day.balance";
  mark.label = "What the wrong void does";
  mark.reason = fmt::format("Between start and end {:.0f} mL were passed; the bottle holds {:.0f} mL, {}.",
                            balance.true_ml, balance.bottle_ml, more_or_less(balance.volume_error()));
  if (balance.true_protein_g > 0) {
    mark.reason +=
        fmt::format(" Protein: {:.2f} g truly passed in the 24 hours, {:.2f} g in the bottle, {}.",
                    balance.true_protein_g, balance.bottle_protein_g, more_or_less(balance.protein_error()));
  }
  marks.push_back(std::move(mark));
}

} // namespace

std::vector<Mark> mark_reception(const Case& marked, bool& stop) {
  std::vector<Mark> marks;
  const auto& book = reception::shipped_book();
  if (!marked.scenario.collection || !book) {
    return marks;
  }
  const auto judgement = judge(*marked.scenario.collection, *book);
  marks.push_back(mark_verdict(marked, judgement, *book));
  mark_faults(marks, marked, judgement, *book);
  add_notes(marks, judgement);
  if (marked.scenario.collection->day) {
    mark_exercise(marks, marked, *book);
    note_balance(marks, *marked.scenario.collection->day);
  }
  marks.push_back(mark_identity(marked, judgement, *book, stop));
  return marks;
}

} // namespace matula::scoring
