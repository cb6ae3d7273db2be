#pragma once

#include "engine/author/preview.hpp"
#include "engine/author/wish.hpp"

namespace matula::author {

/// A specimen that shows what was wished, as it comes back after having been written down.
struct Composition {
  specimen::Specimen specimen;
  Liquid liquid;
  std::vector<Shown> shown;          ///< The wished tests, done by the book on it.
  std::vector<std::string> warnings; ///< Tubes near a line; what no patient passes.
  int tubes = 0;                     ///< Made on the way.
  int rounds = 0;
};

/// Why a wish cannot be had, a sentence each.
using Refused = std::vector<std::string>;

/// "Make it look like this": turns what makes each test, the salts, the pigments and the cells of the base
/// case's specimen until the tests done by the book, the float and the eye say what was wished, and checks it
/// on the specimen as written. Everything else of the base (way to the bench, room, bottles) stays. Takes a
/// second or two; `give_up` ends it with a refusal. The same base and wish give the same specimen.
[[nodiscard]] tl::expected<Composition, Refused> compose(const Shelf& shelf, const scenario::Scenario& base,
                                                         const Wish& wish,
                                                         const scoring::GiveUp& give_up = {});

/// A case to begin from where there is none: the plain urine at a plain bench.
[[nodiscard]] scenario::Scenario plain_case(const Shelf& shelf);

} // namespace matula::author
