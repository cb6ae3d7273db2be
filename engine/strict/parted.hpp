#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <functional>
#include <string>

namespace matula::strict {

/// A TOML text in two: values that were kept and values that were taken out. Comments are in neither; keys
/// keep their order, numbers every bit.
struct Parted {
  std::string kept;
  std::string taken;
};

/// Parts a text. `keep` is asked about every value by its path, "decision.options.protein": places in a list
/// of tables have no number. Text that is not TOML is a problem.
[[nodiscard]] tl::expected<Parted, scenario::Problems>
part(const std::string& text, const std::string& name, const std::function<bool(const std::string&)>& keep);

/// The two put together again. A value that stands in both is a problem.
[[nodiscard]] tl::expected<std::string, scenario::Problems> join(const Parted& halves,
                                                                 const std::string& name);

} // namespace matula::strict
