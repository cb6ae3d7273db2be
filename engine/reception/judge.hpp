#pragma once

#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"

#include <vector>

namespace matula::reception {

/// A rule that does not hold, and what it makes of the delivery.
struct Broken {
  const Rule* rule = nullptr;
  Verdict verdict = Verdict::Note;  ///< After looking at what is asked and whether it can be replaced.
  std::vector<std::string> spoiled; ///< Requests it spoils; empty when all of them.
  bool would_be_refused = false;    ///< Were it to be had again.
};

struct Judgement {
  Verdict verdict = Verdict::Accept;
  bool nobody_knows_whose = false;
  std::vector<Broken> broken;

  /// Whether any broken rule is this fault.
  [[nodiscard]] bool has(const std::string& fault) const;
};

/// What the rules make of a delivery. The result points into `book`.
[[nodiscard]] Judgement judge(const Delivery& delivery, const Book& book);

} // namespace matula::reception
