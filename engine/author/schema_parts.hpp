#pragma once

#include "engine/author/fields.hpp"
#include "engine/author/schema.hpp"
#include "engine/scenario/quantity.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace matula::author {

using Json = nlohmann::ordered_json; // Keys stay in the order they are said in.

// Pieces a schema is put together from.
[[nodiscard]] Json words(const std::string& about);       ///< Some words, not none.
[[nodiscard]] Json maybe_words(const std::string& about); ///< Words, or none.
[[nodiscard]] Json one_of(const std::string& about, const std::vector<std::string>& allowed);
[[nodiscard]] Json list_of(const std::string& about, const std::vector<std::string>& allowed, bool some);
[[nodiscard]] Json number(const std::string& about, const strict::Range& range);
[[nodiscard]] Json whole(const std::string& about, const strict::Range& range);
[[nodiscard]] Json yes_or_no(const std::string& about);
[[nodiscard]] Json quantity(const std::string& about, const scenario::Measure& measure);
[[nodiscard]] Json table(const std::string& about, const Json& properties,
                         const std::vector<std::string>& required);
[[nodiscard]] Json table(const std::string& about, const Fields& fields);
[[nodiscard]] Json property(const Field& field);
[[nodiscard]] Json tables(const std::string& about, const Json& properties,
                          const std::vector<std::string>& required);
[[nodiscard]] Json tables(const std::string& about, const Fields& fields);

// One section each.
[[nodiscard]] Json specimen_schema(const Shelf& shelf);
[[nodiscard]] Json collection_schema(const Shelf& shelf);
[[nodiscard]] Json bench_schema(const Shelf& shelf);
[[nodiscard]] std::vector<std::string> bottle_words(const Shelf& shelf);

} // namespace matula::author
