#pragma once

#include "engine/learner/record.hpp"
#include "engine/practice/float_jar.hpp"
#include "engine/practice/handed_in.hpp"
#include "engine/practice/sum.hpp"
#include "engine/practice/tube.hpp"
#include "engine/scoring/report.hpp"

#include <cstdint>
#include <variant>
#include <vector>

namespace matula::practice {

/// An unknown that has been made: on the bench, on the counter, or on paper.
struct Item {
  Unknown unknown;
  double difficulty = 0; ///< Of what came out.
  std::variant<Tube, FloatJar, Sum, HandedIn> thing;
};

/// Takes up to a second or two for a tube. Throws std::invalid_argument for an unknown that cannot be made.
[[nodiscard]] Item make_item(const Store& store, const Unknown& unknown);

/// What a learner answered: the word of a tube; a float's reading; five lines of a calculation (zero,
/// temperature, protein, glucose, reported; an empty one was left out); verdict and reason for a delivery.
using Reply = std::vector<std::string>;

/// What an answer was worth.
struct Judged {
  std::vector<scoring::Mark> marks; ///< Each in its own ledger.
  int credit = 0;                   ///< Per mille of the marks that are not about safety.
  bool right = false;
  bool on_a_line = false; ///< Two words are right for it.
  bool safety_stop = false;
  std::string written;
  std::string expected;
  std::vector<std::string> words; ///< What was there to see, and why.
  std::string fault;              ///< What the loss is charged to; empty for none.
};

[[nodiscard]] Judged judge(const Store& store, const Item& item, const Reply& reply);

/// As it is kept.
[[nodiscard]] learner::Answer answer_of(const Store& store, const Item& item, const Judged& judged,
                                        learner::From from, std::int64_t when_s);

} // namespace matula::practice
