#pragma once

#include "engine/author/fields.hpp"
#include "engine/drafting/row.hpp"

namespace matula::drafting {

/// The row of a field of a section ("collection", "collection.void[0]"), with what the schema says of it.
[[nodiscard]] Row row_of(const author::Field& field, const std::string& section, const std::string& text);

/// Rows of all fields but lists of words, which are ticked.
[[nodiscard]] std::vector<Row> rows_of(const author::Fields& fields, const std::string& section,
                                       const std::string& text);

} // namespace matula::drafting
