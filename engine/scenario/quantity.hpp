#pragma once

#include "engine/strict/table.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::scenario {

/// A unit an author may write and what one of it is in the base unit.
struct Unit {
  std::string word;
  double in_base = 1;
};

/// What a quantity may be: the first unit is the one that errors speak in. `low` and `high` are in that unit.
struct Measure {
  std::vector<Unit> units;
  double low = 0;
  double high = 0;
};

/// A number and a unit as written ("1.5 g/dL").
struct Written {
  double value = 0;
  std::string unit;
};

/// Splits "1.5 g/dL"; nothing when it is not a finite number followed by a unit.
[[nodiscard]] std::optional<Written> split_quantity(const std::string& text);

/// The quantity under `key` in base units. A bare number, an unknown unit or a value out of range is reported
/// with the units and the range allowed; then nothing is returned. The key must be there.
[[nodiscard]] std::optional<double> read_quantity(const strict::Table& table, const std::string& key,
                                                  const Measure& measure);

/// As above, with a value (base units) for a missing key and after a complaint.
[[nodiscard]] double quantity_or(const strict::Table& table, const std::string& key, const Measure& measure,
                                 double fallback);

/// "from 0 to 700 mmol/L, written as \"350 mmol/L\" (units: mmol/L, g/L)"
[[nodiscard]] std::string allowed_words(const Measure& measure);

} // namespace matula::scenario
