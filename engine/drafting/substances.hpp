#pragma once

#include "engine/author/shelf.hpp"
#include "engine/drafting/row.hpp"
#include "engine/strict/table.hpp"

namespace matula::drafting {

/// A section of `[specimen]` that lists amounts.
struct Section {
  const char* key;     ///< "dissolved"
  const char* heading; ///< What stands behind a name in the list of additions; "" for the plain ones.
};

[[nodiscard]] const std::vector<Section>& sections();

/// Rows for what the specimen's sections list, in their order.
[[nodiscard]] std::vector<Row> substance_rows(const strict::Table& specimen, const std::string& text,
                                              const author::Shelf& shelf);

/// What the sections do not list and could.
[[nodiscard]] std::vector<Addition> additions_to(const strict::Table& specimen, const author::Shelf& shelf);

/// What "make it look like this" may be told the amount of: "dissolved.albumin", in the order of the limits.
[[nodiscard]] std::vector<Addition> wishable(const author::Shelf& shelf);

/// The limits of a section, and the unit its amounts are counted in.
[[nodiscard]] const std::vector<scenario::Limit>& limits_of(const std::string& section,
                                                            const scenario::Limits& limits);
[[nodiscard]] std::string unit_in(const std::string& section, const std::string& key,
                                  const scenario::Limits& limits);

/// "acetoacetate" for people: no underscores.
[[nodiscard]] std::string spoken(std::string key);

} // namespace matula::drafting
