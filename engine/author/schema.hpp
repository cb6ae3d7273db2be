#pragma once

#include "engine/author/shelf.hpp"

#include <string>

namespace matula::author {

/// The JSON Schema (2020-12) of a scenario file, as it is published in scenarios/scenario.schema.json: every
/// key with its meaning, its unit and range, its words. Made from the same limits, bottles and tests the
/// reader goes by. Looser than the reader only where one key must agree with another.
[[nodiscard]] std::string scenario_schema(const Shelf& shelf);

} // namespace matula::author
