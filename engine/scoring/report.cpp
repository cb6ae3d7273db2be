#include "engine/scoring/report.hpp"

#include "engine/scoring/standards.hpp"

namespace matula::scoring {
namespace {

template <typename Value> int sum(const std::vector<Mark>& marks, Ledger ledger, Value value) {
  int total = 0;
  for (const auto& mark : marks) {
    total += mark.ledger == ledger ? value(mark) : 0;
  }
  return total;
}

} // namespace

int Report::earned(Ledger ledger) const {
  return sum(marks, ledger, [](const Mark& mark) { return mark.earned; });
}

int Report::possible(Ledger ledger) const {
  return sum(marks, ledger, [](const Mark& mark) { return mark.possible; });
}

std::string to_word(Ledger ledger) {
  switch (ledger) {
  case Ledger::Reading:
    return "reading";
  case Ledger::Interpretation:
    return "interpretation";
  case Ledger::Arithmetic:
    return "arithmetic";
  case Ledger::Process:
    return "process";
  case Ledger::Safety:
    return "safety";
  }
  return "";
}

} // namespace matula::scoring
