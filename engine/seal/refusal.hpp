#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <string>

namespace matula::seal {

template <class Thing> using Maybe = tl::expected<Thing, scenario::Problems>;

/// One problem of a whole file: what was found there and what is wanted instead.
[[nodiscard]] inline scenario::Problems problem(const std::string& file, std::string found,
                                                std::string wanted) {
  return {{file, 0, 0, "", std::move(found), std::move(wanted)}};
}
[[nodiscard]] inline tl::unexpected<scenario::Problems> refuse(const std::string& file, std::string found,
                                                               std::string wanted) {
  return tl::make_unexpected(problem(file, std::move(found), std::move(wanted)));
}

} // namespace matula::seal
