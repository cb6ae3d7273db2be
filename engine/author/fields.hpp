#pragma once

#include "engine/author/shelf.hpp"
#include "engine/scenario/quantity.hpp"

#include <string>
#include <vector>

namespace matula::author {

/// A key of a section of a case. The published schema and the rows of the authoring form are both made from
/// it.
struct Field {
  enum class Kind {
    Words,      ///< Some words, not none.
    MaybeWords, ///< Words, or none.
    Clock,      ///< "07:40" or "07:40 day 2".
    OneOf,      ///< One of `allowed`.
    ListOf,     ///< Some of `allowed`.
    Number,
    Whole,
    Numbers, ///< A list of `count` numbers.
    YesNo,
    Quantity ///< A number with a unit of `measure`.
  };
  std::string key;
  std::string about;
  Kind kind = Kind::Words;
  bool needed = false;
  std::vector<std::string> allowed;
  strict::Range range; ///< Of a number, and of each in a list.
  scenario::Measure measure;
  std::size_t count = 0;
};
using Fields = std::vector<Field>;

// Fields of the sections that are all values, in the order the schema has them.
[[nodiscard]] Fields collection_fields(const Shelf& shelf); ///< Without its voids.
[[nodiscard]] Fields void_fields(const scenario::Limits& limits);
[[nodiscard]] Fields rules_fields(const scenario::Limits& limits); ///< [laboratory_rules]
[[nodiscard]] Fields weights_fields(const scenario::Limits& limits);
[[nodiscard]] Fields tolerances_fields(const scenario::Limits& limits);
[[nodiscard]] Fields marking_fields();

} // namespace matula::author
