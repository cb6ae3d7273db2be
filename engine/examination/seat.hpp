#pragma once

#include "engine/examination/pack.hpp"

namespace matula::examination {

/// One learner before one case of an examination: all a learner's machine keeps of an opened pack.
struct Seat {
  PackHead head;
  seal::Hash pack_hash{};
  std::string nonce; ///< Of the session, as typed.
  std::string pseudonym;
  std::string label; ///< "unknown-1"
  std::string bench; ///< Bench half of the case.
};

/// Labels of a learner's cases, in order; a problem for somebody the pack was not made for.
[[nodiscard]] seal::Maybe<std::vector<std::string>> labels_of(const Pack& pack, const BenchSection& bench,
                                                              const std::string& pseudonym);

/// Takes a seat; refused for an unknown pseudonym or label, and for a session code with a slip in it.
[[nodiscard]] seal::Maybe<Seat> take_seat(const Pack& pack, const BenchSection& bench,
                                          const std::string& pseudonym, const std::string& label,
                                          const std::string& nonce);

} // namespace matula::examination
