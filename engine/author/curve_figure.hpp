#pragma once

#include "engine/author/shelf.hpp"
#include "engine/scoring/by_the_book.hpp"

namespace matula::author {

/// What a test with a curve of standards gives by the book: each standard, the specimen and its blank are
/// made, read against water, and the specimen's net absorbance is read off the curve. In the unit of the
/// result; nothing when a tube could not be made or read.
[[nodiscard]] std::optional<double> curve_figure(const Shelf& shelf, const bench::Setup& setup,
                                                 const bench::State& begun, const scoring::TestRule& test,
                                                 const scoring::GiveUp& give_up);

} // namespace matula::author
